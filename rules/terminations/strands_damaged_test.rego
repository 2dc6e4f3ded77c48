package driploop.rules.terminations.strands_damaged_test

import data.driploop.rules.terminations.strands_damaged as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

harms(area, nicked, broken) := {found.figures.harm |
	some found in rule.breach with input as doc({"size": "a size", "area_mm2": area, "damaged_strands": nicked, "broken_strands": broken})
}

# AC 43.13-1B table 11-13: 14 AWG 2.081 mm², 12 AWG 3.309, 10 AWG 5.261, 8 AWG 8.366.
test_each_row_at_its_limit if {
	harms(2.081, 2, 0) == set()
	harms(3.309, 4, 0) == set()
	harms(5.261, 4, 0) == set()
	harms(8.366, 6, 6) == set()
}

test_each_row_just_over if {
	harms(2.081, 3, 0) == {"nicked"}
	harms(2.081, 0, 1) == {"broken"}
	harms(5.261, 5, 0) == {"nicked"}
	harms(5.261, 0, 1) == {"broken"}
	harms(8.366, 7, 6) == {"nicked"}
	harms(8.366, 6, 7) == {"broken"}
}

test_a_metric_size_between_two_rows_takes_the_stricter if {
	harms(2.5, 3, 0) == {"nicked"}
	harms(6, 0, 1) == {"broken"}
}
