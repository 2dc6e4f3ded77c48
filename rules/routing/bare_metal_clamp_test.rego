package driploop.rules.routing.bare_metal_clamp_test

import data.driploop.rules.routing.bare_metal_clamp as rule

doc(facts) := {"segments": {"P1[0]": object.union({"path": "conductors.P1.route[0]", "in": "open"}, facts)}}

test_bare_metal_is_a_breach if {
	{found.subject | some found in rule.breach} == {"P1[0]"} with input as doc({"support_kind": "metal-clamp"})
}

test_every_other_support_is_silent if {
	every kind in ["clamp", "cushioned-clamp", "tie", "tape", "saddle", "none"] {
		rule.breach == set() with input as doc({"support_kind": kind})
	}
}

test_conduit_is_excluded if {
	rule.excludes == {"P1[0]"} with input as doc({"in": "conduit"})
	rule.applies == {"P1[0]"} with input as doc({"in": "loom"})
}

test_silent_without_the_support if {
	rule.breach == set() with input as doc({})
}
