package driploop.rules.measurements.drop_above_computed_test

import data.driploop.rules.measurements.drop_above_computed

reading(facts) := {"tests": {"0000": object.union({"path": "tests[0]", "kind": "voltage-drop", "current_a": 10, "computed_drop_v": 0.4, "tolerance_v": 0.1, "allowed_drop_v": 0.5}, facts)}}

subjects(input_facts) := {found.subject | some found in drop_above_computed.breach with input as input_facts}

test_silent_at_the_limit_fires_above if {
	subjects(reading({"drop_v": 0.5})) == set()
	subjects(reading({"drop_v": 0.51})) == {"0000"}
}

test_asks_for_the_tolerance_only_above_the_computed_drop if {
	drop_above_computed.asks == set() with input as reading({"drop_v": 0.4})
	drop_above_computed.asks == {{"subject": "0000", "fact": "allowed_drop_v"}} with input as reading({"drop_v": 0.41})
}

test_applies_to_drop_tests_only if {
	drop_above_computed.applies == {"0000"} with input as reading({})
	drop_above_computed.applies == set() with input as reading({"kind": "polarity"})
	subjects(reading({"kind": "function", "drop_v": 3})) == set()
}

test_leaves_out_tests_of_another_kind if {
	drop_above_computed.excludes == {"0000"} with input as reading({"kind": "polarity"})
	drop_above_computed.excludes == set() with input as reading({})
}
