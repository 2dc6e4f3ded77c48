package driploop.rules.terminations.wrong_terminal_test

import data.driploop.rules.terminations.wrong_terminal as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

sets(facts) := {found.set | some found in rule.breach with input as doc(facts)}

test_plain_spades_and_bare_strands if {
	sets({"terminal": "spade"}) == {"us-voluntary"}
	sets({"terminal": "bare"}) == {"us-voluntary"}
	sets({"terminal": "spade", "on_kind": "busbar"}) == {"us-voluntary", "us-inspected"}
}

test_captive_terminals_are_silent if {
	every terminal in ["ring", "captive-spade", "flanged-spade", "solder-lug", "butt"] {
		sets({"terminal": terminal, "on_kind": "busbar"}) == set()
	}
}

test_friction_terminals_only_on_screw_blocks if {
	sets({"terminal": "blade"}) == set()
	sets({"terminal": "blade", "on_kind": "busbar"}) == {"us-inspected"}
	sets({"terminal": "ferrule", "on_kind": "busbar"}) == {"us-inspected"}
}

test_silent_without_the_terminal if {
	sets({}) == set()
}
