package driploop.rules.terminations.wing_nut_test

import data.driploop.rules.terminations.wing_nut as rule

doc(facts) := {"ends": {"P1.from": object.union({"path": "conductors.P1.ends.from", "on": "house.pos", "on_kind": "battery", "size": "a size"}, facts)}}

sets(facts) := {a.set | some a in rule.applies with input as doc(facts)}

# 6 AWG 13.30 mm², 8 AWG 8.366 mm².
test_from_six_gauge_on if {
	sets({"area_mm2": 13.3}) == {"us-voluntary", "workmanship"}
	sets({"area_mm2": 8.366}) == set()
	sets({"area_mm2": 16}) == {"us-voluntary", "workmanship"}
}

test_away_from_batteries_by_workmanship_alone if {
	sets({"area_mm2": 13.3, "on_kind": "busbar"}) == {"workmanship"}
}

test_wing_nut if {
	count(rule.breach) == 1 with input as doc({"nut": "wing-nut"})
	rule.breach == set() with input as doc({"nut": "lock-nut"})
	rule.breach == set() with input as doc({})
}
