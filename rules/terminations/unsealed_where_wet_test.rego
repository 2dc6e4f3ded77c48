package driploop.rules.terminations.unsealed_where_wet_test

import data.driploop.rules.terminations.unsealed_where_wet as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

found(facts) := {[f.severity, f.limit.rating] | some f in rule.breach with input as doc(facts)}

ratings(facts) := {f.limit.rating | some f in rule.breach with input as doc(facts)}

test_each_exposure_asks_for_its_guard if {
	ratings({"exposure": "damp", "guarded_drips": false}) == {"IPX1"}
	ratings({"exposure": "damp", "guarded_drips": true}) == set()
	ratings({"exposure": "wet", "guarded_splash": false}) == {"IPX4"}
	ratings({"exposure": "wet", "guarded_splash": true}) == set()
	ratings({"exposure": "washed", "guarded_jets": false, "guarded_immersion": false}) == {"IPX6"}
	ratings({"exposure": "washed", "guarded_jets": true}) == set()
	ratings({"exposure": "immersed", "guarded_immersion": false}) == {"IPX7"}
	ratings({"exposure": "immersed", "guarded_immersion": true}) == set()
}

test_damp_and_immersion_alone_are_cautions if {
	found({"exposure": "damp", "guarded_drips": false}) == {["caution", "IPX1"]}
	found({"exposure": "washed", "guarded_jets": false, "guarded_immersion": true}) == {["caution", "IPX6"]}
	found({"exposure": "washed", "guarded_jets": false, "guarded_immersion": false}) == {["warning", "IPX6"]}
}

sets(exposure) := {a.set | some a in rule.applies with input as doc({"exposure": exposure})}

test_sets_by_exposure if {
	sets("dry") == set()
	sets("damp") == {"workmanship"}
	sets("washed") == {"workmanship", "us-inspected"}
	sets("immersed") == {"workmanship", "us-inspected", "us-voluntary"}
}

test_asks_for_what_the_place_needs if {
	rule.asks == {{"subject": "P1.to", "fact": "guarded_splash"}} with input as doc({"exposure": "wet"})
	rule.asks == set() with input as doc({"exposure": "dry"})
}

test_silent_while_something_is_missing if {
	ratings({"exposure": "wet"}) == set()
	ratings({"guarded_splash": false}) == set()
}

test_the_limits_shown_are_those_judged_by if {
	every set in ["workmanship", "us-inspected"] {
		rule.limits[set]["in a wet place"].rating == rule.needed.wet.rating
		rule.limits[set]["in a washed place"].rating == rule.needed.washed.rating
		rule.limits[set].immersed.rating == rule.needed.immersed.rating
	}
}
