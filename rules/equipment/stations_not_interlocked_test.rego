package driploop.rules.equipment.stations_not_interlocked_test

import data.driploop.rules.equipment.stations_not_interlocked as rule

winch(facts) := {"loads": {"winch": object.union({"path": "components.winch", "kind": "motor", "reversible": true}, facts)}}

found(facts) := {f.figures.stations | some f in rule.breach with input as winch(facts)}

test_fires_on_two_stations_without_interlock if {
	found({"stations": 2, "interlocked": false}) == {2}
}

test_silent_with_interlock_or_one_station if {
	found({"stations": 3, "interlocked": true}) == set()
	found({"stations": 1, "interlocked": false}) == set()
	found({"interlocked": false}) == set()
	found({"stations": 2}) == set()
}

test_asks_for_stations_only_without_interlock if {
	count(rule.asks) == 1 with input as winch({"interlocked": false})
	count(rule.asks) == 0 with input as winch({"interlocked": true})
}

test_applies_to_what_runs_both_ways if {
	rule.applies == {"winch"} with input as winch({})
	rule.excludes == {"winch"} with input as winch({"reversible": false})
}
