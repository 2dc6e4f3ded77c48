package driploop.rules.routing.no_drip_loop_test

import data.driploop.rules.routing.no_drip_loop as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

breached(facts) := {found.subject | some found in rule.breach with input as doc(facts)}

test_breach_in_every_exposure_but_dry if {
	every exposure in ["damp", "wet", "washed", "immersed"] {
		breached({"exposure": exposure, "unlooped": true}) == {"P1.to"}
	}
	breached({"exposure": "dry", "unlooped": true}) == set()
}

test_a_loop_or_a_cable_from_below_is_silent if {
	breached({"exposure": "wet", "unlooped": false}) == set()
}

test_silent_while_something_is_missing if {
	breached({"exposure": "wet"}) == set()
	breached({"unlooped": true}) == set()
}

test_does_not_apply_where_dry_nor_on_a_battery if {
	rule.excludes == {"P1.to"} with input as doc({"exposure": "dry"})
	rule.excludes == {"P1.to"} with input as doc({"on_kind": "battery"})
	rule.excludes == {"P1.to"} with input as doc({"on_kind": "ground", "exposure": "wet"})
	rule.applies == set() with input as doc({"on_kind": "ground", "exposure": "wet"})
	rule.applies == {"P1.to"} with input as doc({"exposure": "damp"})
}
