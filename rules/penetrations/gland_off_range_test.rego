package driploop.rules.penetrations.gland_off_range_test

import data.driploop.rules.penetrations.gland_off_range

gland(facts) := {"penetrations": {"plug": object.union({"path": "penetrations.plug", "seal_kind": "gland", "grip_least_mm": 6, "grip_most_mm": 12, "cables": 1}, facts)}}

cable(least, most) := {"thin_least_mm": least, "thin_most_mm": most, "thick_least_mm": least, "thick_most_mm": most}

subjects(input_facts) := {found.subject | some found in gland_off_range.breach with input as input_facts}

test_silent_at_both_ends_of_the_range if {
	subjects(gland(cable(6, 6))) == set()
	subjects(gland(cable(12, 12))) == set()
}

test_fires_just_outside_the_range if {
	subjects(gland(cable(5.9, 5.9))) == {"plug"}
	subjects(gland(cable(12.1, 12.1))) == {"plug"}
}

test_asks_for_the_diameter_where_the_computed_one_straddles if {
	subjects(gland(cable(5, 7))) == set()
	gland_off_range.asks == {{"subject": "plug", "fact": "measured"}} with input as gland(cable(5, 7))
	gland_off_range.asks == {{"subject": "plug", "fact": "measured"}} with input as gland(cable(11, 13))
	gland_off_range.asks == set() with input as gland(cable(7, 8))
}

test_two_cables_need_two_holes if {
	subjects(gland(object.union(cable(7, 7), {"cables": 2, "seal_holes": 1}))) == {"plug"}
	subjects(gland(object.union(cable(7, 7), {"cables": 2, "seal_holes": 2}))) == set()
	gland_off_range.asks == {{"subject": "plug", "fact": "seal_holes"}} with input as gland(object.union(cable(7, 7), {"cables": 2}))
}

test_applies_to_glands_only if {
	gland_off_range.applies == {"plug"} with input as gland({})
	gland_off_range.applies == set() with input as gland({"seal_kind": "grommet"})
}
