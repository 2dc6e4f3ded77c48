package driploop.rules.documents.not_tested_test

import data.driploop.rules.documents.not_tested

subjects(input_facts) := {found.subject | some found in not_tested.breach with input as input_facts}

test_fires_without_a_test if {
	subjects({"loads": {"fan": {"path": "components.fan", "tested": false}}}) == {"fan"}
}

test_silent_with_a_test if {
	subjects({"loads": {"fan": {"path": "components.fan", "tested": true}}}) == set()
}
