package driploop.rules.routing.near_fuel_line_test

import data.driploop.rules.routing.near_fuel_line as rule

doc(facts) := {"segments": {"P1[0]": object.union({"path": "conductors.P1.route[0]", "fuel_line": true}, facts)}}

faults(facts) := {found.figures.fault | some found in rule.breach with input as doc(facts)}

test_near_and_above_and_rigid_is_silent if {
	faults({"fuel_line_mm": 50, "fuel_line_side": "above", "rigid_support": true}) == set()
	faults({"fuel_line_mm": 50, "fuel_line_side": "beside", "rigid_support": true}) == set()
}

test_each_fault if {
	faults({"fuel_line_mm": 50, "fuel_line_side": "above", "rigid_support": false}) == {"without rigid support"}
	faults({"fuel_line_mm": 50, "fuel_line_side": "below", "rigid_support": true}) == {"below it"}
	faults({"fuel_line_mm": 0, "fuel_line_side": "tied", "rigid_support": true}) == {"fastened to it"}
}

# 6 in = 152.4 mm.
test_within_six_inches if {
	faults({"fuel_line_mm": 152.4, "fuel_line_side": "below", "rigid_support": true}) == {"below it"}
	faults({"fuel_line_mm": 152.5, "fuel_line_side": "below", "rigid_support": false}) == set()
}

test_asks_only_when_near if {
	{a.fact | some a in rule.asks} == {"fuel_line_side", "rigid_support"} with input as doc({"fuel_line_mm": 100})
	rule.asks == set() with input as doc({"fuel_line_mm": 300})
}

test_no_line_in_the_space if {
	rule.excludes == {"P1[0]"} with input as doc({"fuel_line": false})
	rule.applies == {"P1[0]"} with input as doc({})
}
