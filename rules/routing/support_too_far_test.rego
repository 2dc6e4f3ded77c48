package driploop.rules.routing.support_too_far_test

import data.driploop.rules.routing.support_too_far as rule

doc(facts) := {"segments": {"P1[0]": object.union({"path": "conductors.P1.route[0]", "in": "open", "to_disconnect": false}, facts)}}

spaced(mm) := doc({"support_mm": mm, "support_most_mm": mm})

sets(facts) := {found.set | some found in rule.breach with input as facts}

# 18 in = 457.2 mm, 24 in = 609.6 mm.
test_at_each_limit_and_just_over if {
	sets(spaced(450)) == set()
	sets(spaced(450.1)) == {"international"}
	sets(spaced(457.2)) == {"international"}
	sets(spaced(457.3)) == {"international", "us-voluntary"}
	sets(spaced(609.6)) == {"international", "us-voluntary"}
	sets(spaced(609.7)) == {"international", "us-voluntary", "workmanship"}
	sets(spaced(610.1)) == {"international", "us-voluntary", "workmanship", "us-inspected"}
}

test_battery_cable_is_held_closer if {
	facts := doc({"support_mm": 301, "support_most_mm": 301, "to_disconnect": true})
	found := rule.breach with input as facts
	{[f.set, f.clause, f.limit.support_mm] | some f in found} == {["international", "7.4", 300]}
	sets(doc({"support_mm": 300, "support_most_mm": 300, "to_disconnect": true})) == set()
}

test_conduit_trunking_and_tray_are_excluded if {
	every how in ["conduit", "trunking", "tray"] {
		rule.excludes == {"P1[0]"} with input as doc({"in": how})
		rule.applies == set() with input as doc({"in": how})
	}
	rule.applies == {"P1[0]"} with input as doc({"in": "sheath"})
}

test_a_short_conductor_is_not_asked if {
	asked := rule.asks with input as doc({"support_most_mm": 160})
	asked == set()
}

test_a_long_conductor_is_asked_set_by_set if {
	asked := rule.asks with input as doc({"support_most_mm": 500})
	{a.set | some a in asked} == {"international", "us-voluntary"}
}

test_silent_without_the_spacing if {
	sets(doc({"support_most_mm": 3000})) == set()
}
