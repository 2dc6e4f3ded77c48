package driploop.rules.equipment.rating_unmarked_test

import data.driploop.rules.equipment.rating_unmarked as rule

part(facts) := {"components": {"fan": object.union({"path": "components.fan", "kind": "blower", "electric": true}, facts)}}

subjects(facts) := {f.subject | some f in rule.breach with input as part(facts)}

test_fires_without_marking if {
	subjects({"marked": false}) == {"fan"}
}

test_silent_otherwise if {
	subjects({"marked": true}) == set()
	subjects({}) == set()
	subjects({"marked": false, "electric": false}) == set()
}

test_applies_to_electrical_parts if {
	rule.applies == {"fan"} with input as part({})
	rule.applies == set() with input as part({"electric": false})
}
