package driploop.rules.equipment.busbar_overloaded_test

import data.driploop.rules.equipment.busbar_overloaded as rule

bar(facts) := {"components": {"bus": object.union({"path": "components.bus", "kind": "busbar", "electric": false, "rating_a": 100}, facts)}}

subjects(facts) := {f.subject | some f in rule.breach with input as bar(facts)}

test_at_the_rating_and_over if {
	subjects({"current_a": 100}) == set()
	subjects({"current_a": 100.5}) == {"bus"}
}

test_applies_to_bars if {
	rule.applies == {"bus"} with input as bar({})
	rule.applies == set() with input as bar({"kind": "relay"})
	subjects({"kind": "relay", "current_a": 200}) == set()
	subjects({}) == set()
}
