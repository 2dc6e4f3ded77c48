package driploop.rules.protection.resets_itself_test

import data.driploop.rules.protection.resets_itself as rule

device(facts) := {"devices": {"main": object.union({"path": "components.main", "kind": "breaker", "purpose": "normal"}, facts)}}

ways(facts) := {found.figures.how | some found in rule.breach with input as device(facts)}

sets(facts) := {found.set | some found in rule.breach with input as device(facts)}

test_silent_on_a_sound_breaker if {
	ways({"reset": "manual", "trip_free": true}) == set()
}

test_automatic_reset_is_found_by_all if {
	ways({"reset": "automatic", "trip_free": true}) == {"resets itself after a trip"}
	sets({"reset": "automatic", "trip_free": true}) == set()
}

# 33 CFR 183.455(a) asks for trip-free; 46 CFR 183.380(m) and 169.670 do not.
test_held_closed if {
	sets({"reset": "manual", "trip_free": false}) == {"us-federal", "us-voluntary"}
}

test_both_faults_at_once if {
	count(ways({"reset": "automatic", "trip_free": false})) == 2
}

test_silent_where_nothing_is_known if {
	ways({}) == set()
}

test_trip_free_is_asked_only_where_a_set_asks_it if {
	rule.asks == {
		{"subject": "main", "set": "us-federal", "fact": "trip_free"},
		{"subject": "main", "set": "us-voluntary", "fact": "trip_free"},
	} with input as device({})
}

test_a_fuse_is_none_of_it if {
	rule.applies == set() with input as device({"kind": "fuse"})
	rule.asks == set() with input as device({"kind": "fuse"})
}
