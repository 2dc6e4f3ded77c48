package driploop.rules.protection.lighting_branch_high_test

import data.driploop.rules.protection.lighting_branch_high as rule

device(facts) := {"devices": {"fuse": object.union(
	{"path": "components.fuse", "kind": "fuse", "purpose": "branch", "loads": ["lamp"], "parallel": "", "machine": "", "lighting": true},
	facts,
)}}

# 46 CFR 183.380(g), 129.380(f): 30 A.
test_at_30_amperes if {
	count(rule.breach) == 0 with input as device({"rating_a": 30})
	{found.limit.rating_a | some found in rule.breach with input as device({"rating_a": 30.5})} == {30}
}

test_main_devices_and_other_branches_are_left_out if {
	rule.applies == {"fuse"} with input as device({})
	rule.applies == set() with input as device({"purpose": "main"})
	rule.excludes == {"fuse"} with input as device({"purpose": "main"})
	rule.applies == set() with input as device({"lighting": false})
	rule.excludes == {"fuse"} with input as device({"lighting": false})
}
