package driploop.rules.measurements.current_above_nameplate_test

import data.driploop.rules.measurements.current_above_nameplate as rule

clamp(facts) := {"tests": {"0000": object.union(
	{"path": "tests[0]", "kind": "current", "about": "load", "system_v": 12, "current_a": 11, "rated_a": 10},
	facts,
)}}

subjects(facts) := {f.subject | some f in rule.breach with input as clamp(facts)}

# 14.4 V over 12 V is 120 %.
test_a_fifth_at_the_limit_and_over if {
	subjects({"rated_pct": 120}) == set()
	subjects({"rated_pct": 120.1}) == {"0000"}
	subjects({"kind": "voltage-drop", "rated_pct": 130}) == {"0000"}
}

test_silent_without_a_rating_or_current if {
	subjects({}) == set()
	subjects({"kind": "function", "rated_pct": 200}) == set()
}

test_applies_to_currents_of_loads if {
	rule.applies == {"0000"} with input as clamp({})
	rule.applies == {"0000"} with input as clamp({"about": "nothing"})
	rule.excludes == {"0000"} with input as clamp({"about": "conductor"})
	rule.excludes == {"0000"} with input as clamp({"kind": "function"})
	rule.excludes == set() with input as {"tests": {"0000": {"path": "tests[0]", "about": "load"}}}
}
