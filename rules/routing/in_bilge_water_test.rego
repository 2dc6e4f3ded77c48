package driploop.rules.routing.in_bilge_water_test

import data.driploop.rules.routing.in_bilge_water as rule

doc(facts) := {"segments": {"P1[0]": object.union({"path": "conductors.P1.route[0]"}, facts)}}

faults(facts) := {found.figures.fault | some found in rule.breach with input as doc(facts)}

test_below_and_not_made_for_it if {
	count(faults({"below_bilge": true, "made_for_water": false, "unfused": false})) == 1
	count(faults({"below_bilge": true, "made_for_water": true, "unfused": false})) == 0
	count(faults({"below_bilge": false, "made_for_water": false, "unfused": true})) == 0
}

test_unfused_however_the_cable_is_made if {
	found := rule.breach with input as doc({"below_bilge": true, "made_for_water": true, "unfused": true})
	{f.set | some f in found} == {"us-voluntary"}
}

test_asks_only_below_the_water if {
	rule.asks == set() with input as doc({"below_bilge": false})
	{a.fact | some a in rule.asks} == {"made_for_water", "unfused"} with input as doc({"below_bilge": true})
}

test_silent_while_something_is_missing if {
	faults({"made_for_water": false}) == set()
	faults({"below_bilge": true}) == set()
}
