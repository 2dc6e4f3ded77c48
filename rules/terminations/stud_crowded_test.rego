package driploop.rules.terminations.stud_crowded_test

import data.driploop.rules.terminations.stud_crowded as rule

stud(landed) := {"studs": {"bus.a": {"path": "components.bus", "on": "bus.a", "on_kind": "busbar", "landed": landed, "ends": []}}}

sets(landed) := {found.set | some found in rule.breach with input as stud(landed)}

test_silent_at_four if {
	sets(4) == set()
}

test_five_is_a_breach_in_every_set if {
	sets(5) == {"us-voluntary", "international", "workmanship"}
}

test_shows_the_count_and_the_limit if {
	some found in rule.breach with input as stud(6)
	found.figures == {"landed": 6}
	found.limit == {"landed": 4}
}
