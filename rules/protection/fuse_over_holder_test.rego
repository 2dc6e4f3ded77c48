package driploop.rules.protection.fuse_over_holder_test

import data.driploop.rules.protection.fuse_over_holder as rule

device(facts) := {"devices": {"fuse": object.union({"path": "components.fuse", "kind": "fuse", "purpose": "normal", "loads": [], "parallel": "", "machine": ""}, facts)}}

test_over_the_holder if {
	{found.limit.rating_a | some found in rule.breach with input as device({"rating_a": 40, "holder_a": 30})} == {30}
}

test_at_the_holder if {
	count(rule.breach) == 0 with input as device({"rating_a": 30, "holder_a": 30})
}

test_silent_without_a_holder if {
	count(rule.breach) == 0 with input as device({"rating_a": 40})
}

test_a_breaker_has_none if {
	rule.applies == set() with input as device({"kind": "breaker"})
	rule.applies == {"fuse"} with input as device({})
}
