package driploop.rules.protection.one_pole_of_two_test

import data.driploop.rules.protection.one_pole_of_two as rule

boat(earthing, pos, neg) := {
	"vessel": {"path": "vessel", "system_v": 24, "earth_links_seen": 0, "stray_negatives": [], "earthing": earthing},
	"loads": {"lamp": {"path": "components.lamp", "kind": "lamp", "devices": [], "switches": [], "pos_protected": pos, "neg_protected": neg}},
}

bare(pos, neg) := {found.figures.bare | some found in rule.breach with input as boat("insulated", pos, neg)}

test_one_side_protected if {
	bare(true, false) == {"negative"}
	bare(false, true) == {"positive"}
}

test_silent_on_both_or_none if {
	bare(true, true) == set()
	bare(false, false) == set()
}

test_grounded_systems_are_left_out if {
	rule.excludes == {"lamp"} with input as boat("negative-ground", true, false)
	rule.applies == set() with input as boat("negative-ground", true, false)
	rule.applies == {"lamp"} with input as boat("insulated", true, false)
}
