package driploop.rules.terminations.hole_not_stud_test

import data.driploop.rules.terminations.hole_not_stud as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

breached(facts) := {found.limit.hole | some found in rule.breach with input as doc(facts)}

test_any_other_size_is_a_breach if {
	breached({"terminal": "ring", "hole": "M10", "stud": "M8"}) == {"M8"}
	breached({"terminal": "ring", "hole": "M6", "stud": "M8"}) == {"M8"}
	breached({"terminal": "ring", "hole": "M8", "stud": "M8"}) == set()
}

test_silent_while_a_size_is_missing if {
	breached({"terminal": "ring", "hole": "M10"}) == set()
	breached({"terminal": "ring", "stud": "M8"}) == set()
}

test_only_terminals_with_a_hole if {
	rule.applies == {"P1.to"} with input as doc({"terminal": "ring"})
	rule.applies == {"P1.to"} with input as doc({"terminal": "solder-lug"})
	rule.excludes == {"P1.to"} with input as doc({"terminal": "butt"})
	rule.excludes == set() with input as doc({})
}
