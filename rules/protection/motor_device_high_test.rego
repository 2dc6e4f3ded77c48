package driploop.rules.protection.motor_device_high_test

import data.driploop.rules.protection.motor_device_high as rule

device(facts) := {"devices": {"fuse": object.union(
	{"path": "components.fuse", "kind": "fuse", "purpose": "motor", "loads": ["pump"], "parallel": "", "machine": "", "motor": true, "motor_a": 20},
	facts,
)}}

# 46 CFR 169.673(g): 125 % of 20 A is 25 A.
test_at_125_per_cent if {
	count(rule.breach) == 0 with input as device({"rating_a": 25, "motor_pct": 125})
	{found.limit.rating_a | some found in rule.breach with input as device({"rating_a": 26, "motor_pct": 130})} == {25}
}

test_only_before_one_motor if {
	rule.applies == {"fuse"} with input as device({})
	rule.applies == set() with input as device({"motor": false})
	rule.excludes == {"fuse"} with input as device({"motor": false})
}

test_silent_without_the_rating if {
	count(rule.breach) == 0 with input as device({})
}
