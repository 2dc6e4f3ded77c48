package driploop.rules.conductors.untinned_test

import data.driploop.rules.conductors.untinned as rule

wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "", "bare_from": "", "bare_via": "",
	},
	facts,
)}}

found(facts) := {one.figures.exposure |
	some one in rule.breach with input as wire(facts)
	one.subject in rule.applies with input as wire(facts)
}

test_plain_copper_where_damp if {
	found({"wettest": "damp", "tinned": false}) == {"damp"}
	found({"wettest": "washed", "tinned": false}) == {"washed"}
}

test_tinned_is_silent if {
	found({"wettest": "wet", "tinned": true}) == set()
}

test_dry_spaces_are_left_out if {
	found({"wettest": "dry", "tinned": false}) == set()
	rule.excludes == {"P1"} with input as wire({"wettest": "dry"})
}

test_silent_where_nothing_is_known if {
	found({"tinned": false}) == set()
}
