package driploop.rules.equipment.no_local_disconnect_test

import data.driploop.rules.equipment.no_local_disconnect as rule

machine(facts) := {"loads": {"winch": object.union({"path": "components.winch", "kind": "motor"}, facts)}}

subjects(facts) := {f.subject | some f in rule.breach with input as machine(facts)}

test_fires_without_one if {
	every kind in ["motor", "pump", "blower"] {
		subjects({"kind": kind, "local_disconnect": "none"}) == {"winch"}
	}
}

test_silent_in_sight_or_lockable if {
	subjects({"local_disconnect": "in-sight"}) == set()
	subjects({"local_disconnect": "lockable"}) == set()
	subjects({}) == set()
}

test_applies_to_what_moves if {
	rule.applies == {"winch"} with input as machine({})
	rule.applies == set() with input as machine({"kind": "lamp"})
	subjects({"kind": "lamp", "local_disconnect": "none"}) == set()
}
