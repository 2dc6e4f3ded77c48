package driploop.rules.routing.route_not_whole_test

import data.driploop.rules.routing.route_not_whole as rule

doc(length, route) := {"conductors": {"P1": {
	"path": "conductors.P1", "in_housing": false,
	"length_mm": length, "route_mm": route, "route_gap_mm": abs(length - route), "route_gap_pct": (100 * abs(length - route)) / length,
}}}

apart(length, route) if {
	count(rule.breach) == 1 with input as doc(length, route)
}

test_within_50_mm_or_5_percent if {
	not apart(300, 350)
	not apart(300, 250)
	not apart(4000, 4200)
	not apart(4000, 3800)
}

test_beyond_both if {
	apart(300, 351)
	apart(4000, 4201)
	apart(4000, 3799)
}

test_wiring_inside_equipment_is_excluded if {
	rule.excludes == {"P1"} with input as {"conductors": {"P1": {"path": "conductors.P1", "in_housing": true}}}
}
