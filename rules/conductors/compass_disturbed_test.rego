package driploop.rules.conductors.compass_disturbed_test

import data.driploop.rules.conductors.compass_disturbed as rule

wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "", "bare_from": "", "bare_via": "",
		"twisted": false, "compass_mm": 500,
	},
	facts,
)}}

found(facts) := {one.subject |
	some one in rule.breach with input as wire(facts)
	one.subject in rule.applies with input as wire(facts)
}

test_at_one_degree if {
	found({"compass_turn_deg": 1}) == set()
	found({"compass_turn_deg": 1.1}) == {"P1"}
}

test_twisted_pairs_are_left_out if {
	found({"twisted": true, "compass_turn_deg": 9}) == set()
	rule.excludes == {"P1"} with input as wire({"twisted": true})
}

test_silent_without_a_distance if {
	found({}) == set()
}
