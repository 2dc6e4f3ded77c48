package driploop.rules.measurements.insulation_low_test

import data.driploop.rules.measurements.insulation_low as rule

megger(facts) := {"tests": {"0000": object.union(
	{"path": "tests[0]", "kind": "insulation", "about": "conductor", "system_v": 12, "resistance_mohm": 20000000000, "test_v": 250},
	facts,
)}}

severities(facts) := {object.get(f, "severity", "warning") | some f in rule.breach with input as megger(facts)}

# 0.5 MΩ at 250 V, IEC 60364-6 as reported, for installations ashore up to 50 V; in milliohms.
test_half_a_megohm_at_the_limit_and_under if {
	severities({"resistance_mohm": 500000000}) == set()
	severities({"resistance_mohm": 499000000}) == {"warning"}
}

test_weak_meter_is_a_notice if {
	severities({"test_v": 9}) == {"notice"}
	severities({"test_v": 9, "resistance_mohm": 1000}) == {"notice", "warning"}
	severities({"test_v": 500}) == set()
}

test_applies_to_insulation if {
	rule.applies == {"0000"} with input as megger({})
	rule.excludes == {"0000"} with input as megger({"kind": "continuity"})
	severities({"kind": "continuity", "resistance_mohm": 8}) == set()
}
