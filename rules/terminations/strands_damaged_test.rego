package driploop.rules.terminations.strands_damaged_test

import data.driploop.rules.terminations.strands_damaged as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

harms(gauge, nicked, broken) := {found.figures.harm |
	some found in rule.breach with input as doc({"size": gauge, "gauge": gauge, "damaged_strands": nicked, "broken_strands": broken})
}

# AC 43.13-1B table 11-13.
test_each_row_at_its_limit if {
	harms("14 AWG", 2, 0) == set()
	harms("12 AWG", 4, 0) == set()
	harms("10 AWG", 4, 0) == set()
	harms("8 AWG", 6, 6) == set()
}

test_each_row_just_over if {
	harms("14 AWG", 3, 0) == {"nicked"}
	harms("14 AWG", 0, 1) == {"broken"}
	harms("10 AWG", 5, 0) == {"nicked"}
	harms("10 AWG", 0, 1) == {"broken"}
	harms("8 AWG", 7, 6) == {"nicked"}
	harms("8 AWG", 6, 7) == {"broken"}
}

test_finest_and_largest if {
	harms("finer", 3, 0) == {"nicked"}
	harms("4/0 AWG", 6, 6) == set()
}
