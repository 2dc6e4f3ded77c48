package driploop.rules.sources.disconnect_underrated_test

import data.driploop.rules.sources.disconnect_underrated as rule

doc(facts) := {"switches": {"isolator": object.union({"path": "components.isolator", "purpose": "battery-disconnect", "disconnects": false, "continuous_a": 300, "intermittent_a": 500}, facts)}}

loads(facts) := {f.figures.load_a | some f in rule.breach with input as doc(facts)}

test_at_its_ratings_and_just_over if {
	loads({"current_a": 300, "surge_a": 500}) == set()
	loads({"current_a": 300.1, "surge_a": 0}) == {300.1}
	loads({"current_a": 100, "surge_a": 500.1}) == {500.1}
}

test_asks_for_the_short_rating_only_beyond_the_long_one if {
	rule.asks == set() with input as doc({"surge_a": 300})
	count(rule.asks) == 1 with input as doc({"surge_a": 301})
}

test_only_battery_and_main_switches if {
	rule.applies == {"isolator"} with input as doc({})
	rule.applies == set() with input as doc({"purpose": "motor"})
	rule.applies == {"isolator"} with input as doc({"purpose": "normal", "disconnects": true})
}
