package driploop.rules.protection.device_undersized_test

import data.driploop.rules.protection.device_undersized as rule

device(facts) := {"devices": {"fuse": object.union({"path": "components.fuse", "kind": "fuse", "purpose": "normal", "loads": [], "parallel": "", "machine": ""}, facts)}}

test_below_the_load if {
	{found.limit.load_a | some found in rule.breach with input as device({"rating_a": 10, "load_a": 10.1})} == {10.1}
}

test_at_the_load if {
	count(rule.breach) == 0 with input as device({"rating_a": 10, "load_a": 10})
}

test_silent_without_the_load if {
	count(rule.breach) == 0 with input as device({"rating_a": 10})
}
