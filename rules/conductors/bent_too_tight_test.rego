package driploop.rules.conductors.bent_too_tight_test

import data.driploop.rules.conductors.bent_too_tight as rule

wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "", "bare_from": "", "bare_via": "",
		"bend_radius_mm": 50, "diameter_mm": 5,
	},
	facts,
)}}

# TM 1-1500-204-23-4, inspection list (27): ten times.
test_at_ten_times if {
	count(rule.breach) == 0 with input as wire({"bend_diameters": 10})
	{found.limit.times | some found in rule.breach with input as wire({"bend_diameters": 9.9})} == {10}
}

test_silent_without_the_radius if {
	count(rule.breach) == 0 with input as wire({})
}
