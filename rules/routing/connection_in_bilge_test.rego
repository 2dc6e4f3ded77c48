package driploop.rules.routing.connection_in_bilge_test

import data.driploop.rules.routing.connection_in_bilge as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "pump.pos", "in_bilge": true}, facts)}}

breached(facts) := {found.subject | some found in rule.breach with input as doc(facts)}

test_breach_without_a_seal if {
	breached({"guarded_immersion": false}) == {"P1.to"}
	breached({"guarded_immersion": true}) == set()
	breached({}) == set()
}

test_only_in_the_bilge if {
	rule.applies == {"P1.to"} with input as doc({})
	rule.excludes == {"P1.to"} with input as doc({"in_bilge": false})
	breached({"in_bilge": false, "guarded_immersion": false}) == set()
}
