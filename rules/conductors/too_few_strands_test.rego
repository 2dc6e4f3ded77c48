package driploop.rules.conductors.too_few_strands_test

import data.driploop.rules.conductors.too_few_strands as rule

wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "", "bare_from": "", "bare_via": "",
		"size": "10 AWG", "area_mm2": 5.261,
	},
	facts,
)}}

found(facts) := {[one.limit.strands, object.get(one, "severity", "caution")] | some one in rule.breach with input as wire(facts)}

# Reported of ABYC E-11: 19 strands from 16 AWG on.
test_at_19_strands if {
	found({"strands": 18}) == {[19, "caution"]}
	found({"strands": 19, "class": "type-2"}) == set()
}

# 2/0 AWG: 127 of type 2 and 1,323 of type 3, reported.
test_2_0_awg if {
	found({"size": "2/0 AWG", "area_mm2": 67.43, "strands": 126, "class": "type-2"}) == {[127, "caution"]}
	found({"size": "2/0 AWG", "area_mm2": 67.43, "strands": 127, "class": "type-2"}) == set()
	found({"size": "2/0 AWG", "area_mm2": 67.43, "strands": 1322, "class": "type-3"}) == {[1323, "caution"]}
	found({"size": "2/0 AWG", "area_mm2": 67.43, "strands": 1323, "class": "type-3"}) == set()
}

test_rows_from_memory_are_a_notice if {
	found({"strands": 104, "class": "type-3"}) == {[105, "notice"]}
	found({"strands": 105, "class": "type-3"}) == set()
}

test_metric_classes_have_no_row if {
	found({"size": "6 mm²", "area_mm2": 6, "strands": 84, "class": "class-5"}) == set()
}

test_type_is_asked_only_where_it_decides if {
	rule.asks == {{"subject": "P1", "fact": "class"}} with input as wire({"strands": 104})
	rule.asks == set() with input as wire({"strands": 105})
	rule.asks == set() with input as wire({"strands": 18})
}

test_small_conductors_are_left_out if {
	rule.applies == set() with input as wire({"size": "18 AWG", "area_mm2": 0.823})
	rule.excludes == {"P1"} with input as wire({"size": "18 AWG", "area_mm2": 0.823})
	rule.applies == {"P1"} with input as wire({"size": "16 AWG", "area_mm2": 1.309})
}
