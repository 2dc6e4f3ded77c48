package driploop.rules.grounding.bonding_too_small_test

import data.driploop.rules.grounding.bonding_too_small as rule

wire(facts) := {"conductors": {"G1": object.union(
	{"path": "conductors.G1", "bonding": true, "size": "a size", "on_case": false},
	facts,
)}}

limits(facts) := {f.limit.area_mm2 | some f in rule.breach with input as wire(facts)}

# Nominal areas of AWG sizes (ASTM B258): 16 1.309, 14 2.081, 12 3.309, 10 5.261, 8 8.366 mm².
test_eight_awg_between_fittings if {
	limits({"area_mm2": 8.366}) == set()
	limits({"area_mm2": 5.261}) == {8.366}
}

test_case_by_its_feed if {
	limits({"on_case": true, "area_mm2": 2.081, "case_least_mm2": 2.081}) == set()
	limits({"on_case": true, "area_mm2": 2.081, "case_least_mm2": 3.309}) == {3.309}
	limits({"on_case": true, "area_mm2": 8.366, "case_least_mm2": 53.48}) == set()
	limits({"on_case": true, "area_mm2": 5.261, "case_least_mm2": 53.48}) == {8.366}
}

test_case_never_below_sixteen_awg if {
	limits({"on_case": true, "area_mm2": 0.823, "case_least_mm2": 0.823}) == {1.309}
	limits({"on_case": true, "area_mm2": 1.309, "case_least_mm2": 0.823}) == set()
}

test_asks_for_the_feed_only_where_it_decides if {
	count(rule.asks) == 1 with input as wire({"on_case": true, "area_mm2": 5.261})
	count(rule.asks) == 0 with input as wire({"on_case": true, "area_mm2": 8.366})
	count(rule.asks) == 0 with input as wire({"area_mm2": 5.261})
}

test_applies_to_bonding if {
	rule.applies == {"G1"} with input as wire({})
	rule.excludes == {"G1"} with input as wire({"bonding": false})
	limits({"bonding": false, "area_mm2": 0.8}) == set()
}
