package driploop.rules.routing.near_exhaust_test

import data.driploop.rules.routing.near_exhaust as rule

doc(facts) := {"segments": {"P1[0]": object.union({"path": "conductors.P1.route[0]", "dry_exhaust": true, "wet_exhaust": true}, facts)}}

parts(facts) := {found.figures.part | some found in rule.breach with input as doc(facts)}

# 9 in = 228.6 mm, 2 in = 50.8 mm.
test_at_the_limits_and_just_under if {
	parts({"exhaust_dry_mm": 228.6, "exhaust_wet_mm": 50.8}) == set()
	parts({"exhaust_dry_mm": 228.5, "exhaust_wet_mm": 50.8}) == {"dry exhaust"}
	parts({"exhaust_dry_mm": 228.6, "exhaust_wet_mm": 50.7}) == {"wet exhaust"}
}

test_one_near_part_is_enough if {
	parts({"exhaust_dry_mm": 100}) == {"dry exhaust"}
}

test_no_exhaust_in_the_space if {
	rule.excludes == {"P1[0]"} with input as doc({"dry_exhaust": false, "wet_exhaust": false})
	rule.excludes == set() with input as doc({"dry_exhaust": false})
	rule.applies == {"P1[0]"} with input as doc({"dry_exhaust": false})
}

test_asks_for_the_distance_to_what_is_there if {
	{a.fact | some a in rule.asks} == {"exhaust_wet_mm"} with input as doc({"dry_exhaust": false})
}
