package driploop.rules.measurements.reading_implausible_test

import data.driploop.rules.measurements.reading_implausible as rule

# A drop of 0.3 V at 10 A in a 12 V system.
drop(facts) := {"tests": {"0000": object.union(
	{
		"path": "tests[0]", "kind": "voltage-drop", "about": "load", "system_v": 12, "current_a": 10, "at_source_v": 12.6, "at_load_v": 12.3,
		"gain_v": -0.3, "tolerance_v": 0.1, "source_pct": 105, "load_pct": 102.5,
	},
	facts,
)}}

odd(facts) := {f.figures.odd | some f in rule.breach with input as drop(facts)}

test_silent_on_a_plain_drop if {
	odd({}) == set()
}

test_gain_within_the_tolerance_and_over if {
	odd({"gain_v": 0.1}) == set()
	odd({"gain_v": 0.2}) == {"more voltage at the load than at the source"}
}

test_no_current if {
	odd({"current_a": 0}) == {"no current flowed, so that nothing could drop"}
	odd({"current_a": -3}) == {"no current flowed, so that nothing could drop"}
}

# 75 and 130 % of nominal: from memory, unverified.
test_voltage_of_another_system if {
	odd({"source_pct": 75}) == set()
	odd({"source_pct": 74}) == {"the voltage at the source is none of a battery of this system"}
	odd({"source_pct": 130}) == set()
	odd({"source_pct": 131}) == {"the voltage at the source is none of a battery of this system"}
	odd({"load_pct": 40}) == set()
	odd({"load_pct": 131}) == {"the voltage at the load is none of this system"}
}

test_reversed_is_no_pass if {
	odd({"kind": "polarity", "polarity": "reversed", "result": "pass"}) == {"found reversed, and recorded as passed"}
	odd({"kind": "polarity", "polarity": "reversed", "result": "fail"}) == set()
	odd({"kind": "polarity", "polarity": "correct", "result": "pass"}) == set()
}

test_asks_by_kind if {
	{a.fact | some a in rule.asks} == {"current_a", "at_source_v", "at_load_v", "gain_v", "source_pct", "load_pct"} with input as drop({})
	{a.fact | some a in rule.asks} == {"polarity"} with input as drop({"kind": "polarity"})
	{a.fact | some a in rule.asks} == {"polarity", "result"} with input as drop({"kind": "polarity", "polarity": "reversed"})
}

test_applies_to_drop_and_polarity if {
	rule.applies == {"0000"} with input as drop({})
	rule.excludes == {"0000"} with input as drop({"kind": "hose"})
}
