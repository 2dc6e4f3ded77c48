package driploop.rules.terminations.outside_enclosure_test

import data.driploop.rules.terminations.outside_enclosure as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

breached(facts) := {found.subject | some found in rule.breach with input as doc(facts)}

test_none_and_open if {
	breached({"enclosure": "none"}) == {"P1.to"}
	breached({"enclosure": "open"}) == {"P1.to"}
	breached({"enclosure": "fire-retardant"}) == set()
	breached({"enclosure": "watertight"}) == set()
	breached({}) == set()
}

test_batteries_and_ground_points_are_left_out if {
	rule.applies == set() with input as doc({"on_kind": "battery"})
	rule.applies == set() with input as doc({"on_kind": "ground"})
	rule.applies == {"P1.to"} with input as doc({})
}
