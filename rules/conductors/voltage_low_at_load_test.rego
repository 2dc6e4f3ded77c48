package driploop.rules.conductors.voltage_low_at_load_test

import data.driploop.rules.conductors.voltage_low_at_load as rule

load(facts) := {"loads": {"radio": object.union({"path": "components.radio", "kind": "electronics", "devices": [], "switches": [], "shared_with": ""}, facts)}}

test_below_the_least_voltage if {
	{found.limit.voltage_v | some found in rule.breach with input as load({"low_voltage_v": 10.4, "min_v": 10.5})} == {10.5}
}

test_at_the_least_voltage if {
	count(rule.breach) == 0 with input as load({"low_voltage_v": 10.5, "min_v": 10.5})
}

test_silent_without_a_minimum if {
	count(rule.breach) == 0 with input as load({"low_voltage_v": 9})
}
