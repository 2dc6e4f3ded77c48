package driploop.rules.routing.ac_with_dc_test

import data.driploop.rules.routing.ac_with_dc as rule

doc(facts) := {"segments": {"P1[0]": object.union({"path": "conductors.P1.route[0]"}, facts)}}

breached(facts) := {found.subject | some found in rule.breach with input as doc(facts)}

test_one_bundle_and_one_sheath if {
	breached({"with_ac": "bundled"}) == {"P1[0]"}
	breached({"with_ac": "one-sheath"}) == {"P1[0]"}
}

test_apart_is_silent if {
	breached({"with_ac": "none"}) == set()
	breached({"with_ac": "separated"}) == set()
	breached({}) == set()
}
