package driploop.rules.protection.devices_in_parallel_test

import data.driploop.rules.protection.devices_in_parallel as rule

device(parallel) := {"devices": {"one": {"path": "components.one", "kind": "breaker", "purpose": "branch", "loads": ["heater"], "machine": "", "parallel": parallel}}}

test_names_the_others if {
	{found.figures.others | some found in rule.breach with input as device("two, three")} == {"two, three"}
}

test_silent_alone if {
	count(rule.breach) == 0 with input as device("")
}
