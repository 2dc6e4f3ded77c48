package driploop.rules.terminations.friction_hold_weak_test

import data.driploop.rules.terminations.friction_hold_weak as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

breached(facts) := {found.subject | some found in rule.breach with input as doc(facts)}

# 6 lbf = 26.6893 N.
test_six_pounds_force if {
	breached({"terminal": "blade", "pull_held_n": 26.68}) == {"P1.to"}
	breached({"terminal": "blade", "pull_held_n": 26.69}) == set()
	breached({"terminal": "blade"}) == set()
}

test_only_friction_terminals if {
	rule.applies == {"P1.to"} with input as doc({"terminal": "bullet"})
	rule.excludes == {"P1.to"} with input as doc({"terminal": "ring"})
}
