package driploop.rules.terminations.twist_on_connector_test

import data.driploop.rules.terminations.twist_on_connector as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

test_twist_on_is_a_breach if {
	rule.breach == {{"subject": "P1.to", "figures": {"on": "lamp.pos"}}} with input as doc({"terminal": "twist-on"})
}

test_other_terminals_are_silent if {
	every terminal in ["ring", "butt", "bullet", "solder-lug", "plug"] {
		rule.breach == set() with input as doc({"terminal": terminal})
	}
	rule.breach == set() with input as doc({})
}
