package driploop.rules.sources.cranking_grounds_apart_test

import data.driploop.rules.sources.cranking_grounds_apart as rule

doc(facts) := {"vessel": object.union({"path": "vessel", "system_v": 12, "petrol": true, "petrol_engines": 2}, facts)}

test_not_joined if {
	count(rule.breach) == 1 with input as doc({"cranking_joined": false})
	rule.breach == set() with input as doc({})
}

# 1/0 AWG 53.48 mm², 2 AWG 33.63 mm².
test_joined_by_as_large_a_conductor if {
	rule.breach == set() with input as doc({"cranking_joined": true, "cranking_link_mm2": 53.48, "cranking_cable_mm2": 53.48})
	count(rule.breach) == 1 with input as doc({"cranking_joined": true, "cranking_link_mm2": 33.63, "cranking_cable_mm2": 53.48})
}

test_one_engine_or_no_petrol if {
	rule.excludes == {"vessel"} with input as doc({"petrol_engines": 1})
	rule.excludes == {"vessel"} with input as doc({"petrol": false})
	rule.applies == {"vessel"} with input as doc({})
}

test_asks_for_sizes_once_joined if {
	count(rule.asks) == 2 with input as doc({"cranking_joined": true})
	rule.asks == set() with input as doc({"cranking_joined": false})
}
