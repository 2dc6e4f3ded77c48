package driploop.rules.grounding.bonding_carries_current_test

import data.driploop.rules.grounding.bonding_carries_current as rule

wire(bonding, facts) := {"conductors": {"G1": object.union({"path": "conductors.G1", "bonding": bonding}, facts)}}

subjects(bonding, facts) := {f.subject | some f in rule.breach with input as wire(bonding, facts)}

test_fires_on_any_current if {
	subjects(true, {"current_a": 0.001}) == {"G1"}
}

test_silent_without_current if {
	subjects(true, {"current_a": 0}) == set()
	subjects(true, {}) == set()
}

test_other_conductors_are_made_to_carry if {
	subjects(false, {"current_a": 10}) == set()
	rule.excludes == {"G1"} with input as wire(false, {})
	rule.applies == {"G1"} with input as wire(true, {})
}
