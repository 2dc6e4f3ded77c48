package driploop.rules.sources.battery_by_fuel_test

import data.driploop.rules.sources.battery_by_fuel as rule

doc(facts) := {"batteries": {"house": object.union({"path": "components.house", "cranking_given": false, "bypass": []}, facts)}}

good := {"fuel_above": "none", "fuel_metal_mm": 900, "fuel_shield": false}

sets(facts) := {f.set | some f in rule.breach with input as doc(object.union(good, facts))}

test_what_stands_above_or_below if {
	sets({"fuel_above": "tank"}) == {"us-federal", "us-voluntary", "international"}
	sets({"fuel_above": "filter"}) == {"us-federal", "us-voluntary", "international"}
	sets({"fuel_above": "fitting"}) == {"us-federal", "us-voluntary"}
	sets({}) == set()
}

# 12 in = 304.8 mm.
test_metal_within_reach if {
	sets({"fuel_metal_mm": 300}) == {"us-federal", "us-voluntary", "international"}
	sets({"fuel_metal_mm": 304.8}) == {"us-federal", "us-voluntary"}
	sets({"fuel_metal_mm": 304.9}) == set()
	sets({"fuel_metal_mm": 100, "fuel_shield": true}) == set()
}

test_asks_for_the_shield_only_when_near if {
	rule.asks == set() with input as doc({"fuel_metal_mm": 305})
	count(rule.asks) == 3 with input as doc({"fuel_metal_mm": 200})
}
