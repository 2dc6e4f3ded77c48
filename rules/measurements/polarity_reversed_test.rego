package driploop.rules.measurements.polarity_reversed_test

import data.driploop.rules.measurements.polarity_reversed

reading(facts) := {"tests": {"0000": object.union({"path": "tests[0]", "kind": "polarity"}, facts)}}

subjects(input_facts) := {found.subject | some found in polarity_reversed.breach with input as input_facts}

test_fires_on_a_reversed_pair if {
	subjects(reading({"polarity": "reversed"})) == {"0000"}
}

test_silent_on_a_correct_pair if {
	subjects(reading({"polarity": "correct"})) == set()
}

test_applies_to_polarity_tests_only if {
	polarity_reversed.applies == {"0000"} with input as reading({})
	polarity_reversed.applies == set() with input as reading({"kind": "function"})
}

test_leaves_out_tests_of_another_kind if {
	polarity_reversed.excludes == {"0000"} with input as reading({"kind": "function"})
	polarity_reversed.excludes == set() with input as reading({})
}
