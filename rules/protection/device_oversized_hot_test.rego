package driploop.rules.protection.device_oversized_hot_test

import data.driploop.rules.protection.device_oversized_hot as rule

# wire is one of 80 A by Table 5 and 68 A in an engine space (note 1, 105 °C:
# 0.85); given facts replace its own.
wire(facts) := {"conductors": {"P2": object.union(
	{
		"path": "conductors.P2", "from": "fuse.load", "to": "winch.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "ungrounded": true, "bare": false, "size": "8 AWG",
		"guarded_by": "fuse", "table5_a": 80, "allowable_a": 68,
	},
	facts,
)}}

limits(facts) := {found.limit.guard_a | some found in rule.breach with input as wire(facts)}

# 150 % of 68 A is 102 A, of 80 A 120 A.
test_within_the_letter_and_too_hot if {
	limits({"guard_a": 110, "guard_table5_pct": 137.5, "guard_allowable_pct": 161.8}) == {102}
}

test_at_the_corrected_ceiling if {
	limits({"guard_a": 102, "guard_table5_pct": 127.5, "guard_allowable_pct": 150}) == set()
}

test_beyond_the_letter_is_left_to_device_oversized if {
	limits({"guard_a": 150, "guard_table5_pct": 187.5, "guard_allowable_pct": 220.6}) == set()
}

test_what_it_leaves_out if {
	every facts in [{"bare": true}, {"ungrounded": false}, {"duty": "cranking"}, {"pigtail": true}, {"fed": false}] {
		rule.excludes == {"P2"} with input as wire(facts)
		rule.applies == set() with input as wire(facts)
	}
	rule.applies == {"P2"} with input as wire({})
}
