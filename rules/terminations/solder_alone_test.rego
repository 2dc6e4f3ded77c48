package driploop.rules.terminations.solder_alone_test

import data.driploop.rules.terminations.solder_alone as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

breached(facts) := {found.subject | some found in rule.breach with input as doc(facts)}

test_solder_only if {
	breached({"solder": "only"}) == {"P1.to"}
	breached({"solder": "also"}) == set()
	breached({"solder": "none"}) == set()
	breached({}) == set()
}

test_battery_lug_by_its_contact_length if {
	breached({"solder": "battery-lug", "solder_times": 1.49}) == {"P1.to"}
	breached({"solder": "battery-lug", "solder_times": 1.5}) == set()
}

test_asks_the_contact_length_of_battery_lugs if {
	count(rule.asks) == 1 with input as doc({"solder": "battery-lug"})
	rule.asks == set() with input as doc({"solder": "none"})
}
