package driploop.rules.terminations.barrel_not_gauge_test

import data.driploop.rules.terminations.barrel_not_gauge as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

barrel := {"terminal": "ring", "size": "a size", "barrel": "16 AWG to 14 AWG", "barrel_least_mm2": 1.309, "barrel_most_mm2": 2.081}

breached(facts) := {found.subject | some found in rule.breach with input as doc(object.union(barrel, facts))}

test_in_range_at_both_ends if {
	breached({"area_mm2": 1.309}) == set()
	breached({"area_mm2": 2.081}) == set()
}

test_out_of_range if {
	breached({"area_mm2": 0.823}) == {"P1.to"}
	breached({"area_mm2": 3.309}) == {"P1.to"}
}

test_silent_without_the_size if {
	breached({}) == set()
}

test_only_crimped_terminals if {
	rule.applies == {"P1.to"} with input as doc({"terminal": "butt"})
	rule.excludes == {"P1.to"} with input as doc({"terminal": "spring-clip"})
}
