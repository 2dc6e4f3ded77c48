package driploop.rules.routing.loom_burns_test

import data.driploop.rules.routing.loom_burns as rule

doc(facts) := {"segments": {"P1[0]": object.union({"path": "conductors.P1.route[0]", "in": "loom"}, facts)}}

breached(facts) := {found.figures.loom | some found in rule.breach with input as doc(facts)}

test_v_2_and_better_are_silent if {
	every rating in ["ul-94-v-0", "ul-94-v-1", "ul-94-v-2"] {
		breached({"loom_rating": rating}) == set()
	}
	breached({}) == set()
}

test_worse_is_a_breach if {
	breached({"loom_rating": "ul-94-hb"}) == {"UL 94 HB"}
	breached({"loom_rating": "none"}) == {"without a flame rating"}
}

test_only_in_loom if {
	rule.excludes == {"P1[0]"} with input as doc({"in": "open"})
	rule.applies == {"P1[0]"} with input as doc({})
}
