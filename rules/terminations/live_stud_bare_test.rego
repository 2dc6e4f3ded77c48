package driploop.rules.terminations.live_stud_bare_test

import data.driploop.rules.terminations.live_stud_bare as rule

doc(facts) := {"studs": {"house.pos": object.union({"path": "components.house", "on": "house.pos", "landed": 1, "ungrounded": true, "always_live": true}, facts)}}

breached(facts) := {found.subject | some found in rule.breach with input as doc(facts)}

test_unguarded if {
	breached({"unguarded": true}) == {"house.pos"}
	breached({"unguarded": false}) == set()
	breached({}) == set()
}

test_grounded_or_switched_studs_are_excluded if {
	rule.excludes == {"house.pos"} with input as doc({"ungrounded": false})
	rule.excludes == {"house.pos"} with input as doc({"always_live": false})
	rule.excludes == set() with input as doc({})
	rule.applies == {"house.pos"} with input as doc({})
	breached({"always_live": false, "unguarded": true}) == set()
}
