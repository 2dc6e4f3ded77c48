package driploop.rules.equipment.voltage_mismatch_test

import data.driploop.rules.equipment.voltage_mismatch

fan(rated, nominal) := {"loads": {"fan": {"path": "components.fan", "kind": "blower", "rated_v": rated, "nominal_v": nominal}}}

subjects(input_facts) := {found.subject | some found in voltage_mismatch.breach with input as input_facts}

test_fires_on_another_voltage if {
	subjects(fan(12, 24)) == {"fan"}
	subjects(fan(24, 12)) == {"fan"}
}

test_silent_on_the_same_voltage if {
	subjects(fan(12, 12)) == set()
}
