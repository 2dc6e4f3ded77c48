package driploop.rules.routing.first_support_far_test

import data.driploop.rules.routing.first_support_far as rule

doc(facts) := {"conductors": {"P1": object.union({"path": "conductors.P1", "on_battery": true}, facts)}}

at(mm) := doc({"first_support_mm": mm, "first_support_most_mm": mm})

sets(facts) := {found.set | some found in rule.breach with input as facts}

# 36 in = 914.4 mm.
test_at_the_limits_and_just_over if {
	sets(at(914.4)) == set()
	sets(at(914.5)) == {"us-voluntary"}
	sets(at(1000)) == {"us-voluntary"}
	sets(at(1000.1)) == {"us-voluntary", "international"}
}

test_only_on_a_battery if {
	rule.applies == {"P1"} with input as doc({})
	rule.applies == set() with input as doc({"on_battery": false})
}

test_a_short_cable_is_not_asked if {
	rule.asks == set() with input as doc({"first_support_most_mm": 300})
	count(rule.asks) == 2 with input as doc({"first_support_most_mm": 1200})
}
