package driploop.rules.protection.generator_device_high_test

import data.driploop.rules.protection.generator_device_high as rule

# device protects an alternator of 100 A that does not limit itself.
device(facts) := {"devices": {"fuse": object.union(
	{
		"path": "components.fuse", "kind": "fuse", "purpose": "charging", "loads": [], "parallel": "", "machine": "alternator",
		"machine_a": 100, "machine_limits": false,
	},
	facts,
)}}

sets(facts) := {applied.set |
	some applied in rule.applies with input as device(facts)
	some found in rule.breach with input as device(facts)
	found.set == applied.set
}

# 33 CFR 183.460(b): 120 %. 46 CFR 183.320(f), 28.365(a), 129.380(c): 115 %.
test_at_120_per_cent if {
	sets({"rating_a": 120, "machine_pct": 120}) == {"us-inspected"}
	sets({"rating_a": 120.1, "machine_pct": 120.1}) == {"us-federal", "us-inspected"}
}

test_at_115_per_cent if {
	sets({"rating_a": 115, "machine_pct": 115}) == set()
	sets({"rating_a": 115.1, "machine_pct": 115.1}) == {"us-inspected"}
}

test_self_limiting_machine_is_exempt_by_33_cfr_alone if {
	sets({"rating_a": 150, "machine_pct": 150, "machine_limits": true}) == {"us-inspected"}
	{"subject": "fuse", "set": "us-federal"} in rule.excludes with input as device({"machine_limits": true})
}

test_silent_where_the_share_is_unknown if {
	sets({"rating_a": 150}) == set()
}

test_other_devices_are_left_out if {
	"fuse" in rule.excludes with input as device({"machine": ""})
	rule.applies == set() with input as device({"machine": ""})
}
