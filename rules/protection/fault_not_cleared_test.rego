package driploop.rules.protection.fault_not_cleared_test

import data.driploop.rules.protection.fault_not_cleared as rule

wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "", "bare_from": "", "bare_via": "", "behind_device": true,
		"size": "16 AWG", "ungrounded": true, "guard_fused": true, "fault_least_a": 60,
	},
	facts,
)}}

severities(facts) := {object.get(found, "severity", "danger") |
	some found in rule.breach with input as wire(facts)
	found.subject in rule.applies with input as wire(facts)
}

test_device_that_need_not_open if {
	severities({"clears": false}) == {"danger"}
	severities({"clears": false, "guard_fused": false}) == {"danger"}
}

# IEC 60364-4-43, 434.5.2: 5 s.
test_fuse_at_5_s if {
	severities({"clears": true, "clear_by_s": 5, "clear_s": 5}) == set()
	severities({"clears": true, "clear_by_s": 5.1, "clear_s": 5.1}) == {"warning"}
}

# The calibration of a breaker ends at twice its rating and says no more than
# that it opens.
test_time_of_a_breaker_is_left_aside if {
	severities({"clears": true, "clear_by_s": 240, "clear_s": 240, "guard_fused": false}) == set()
	rule.asks == set() with input as wire({"clears": true, "guard_fused": false})
	asked({}) == {"clear_by_s"}
}

asked(facts) := {ask.fact | some ask in rule.asks with input as wire(object.union({"clears": true}, facts))}

# A fuse of which no gates are held may stand ahead of one that opens in time.
test_when_it_opens_matters_only_beyond_5_s if {
	asked({"clear_by_s": 5}) == {"clear_by_s"}
	asked({"clear_by_s": 5.1}) == {"clear_by_s", "clear_s"}
	severities({"clears": true, "clear_by_s": 5.1}) == set()
}

test_what_it_leaves_out if {
	every facts in [{"duty": "cranking"}, {"ungrounded": false}, {"behind_device": false}] {
		rule.applies == set() with input as wire(facts)
		rule.excludes == {"P1"} with input as wire(facts)
	}
}
