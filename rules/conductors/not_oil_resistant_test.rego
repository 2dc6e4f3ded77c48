package driploop.rules.conductors.not_oil_resistant_test

import data.driploop.rules.conductors.not_oil_resistant as rule

wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "", "bare_from": "", "bare_via": "",
	},
	facts,
)}}

found(facts) := {one.subject |
	some one in rule.breach with input as wire(facts)
	one.subject in rule.applies with input as wire(facts)
}

test_in_an_engine_space if {
	found({"in_engine_space": true, "oil_resistant": false}) == {"P1"}
	found({"in_engine_space": true, "oil_resistant": true}) == set()
}

test_elsewhere_it_is_left_out if {
	found({"in_engine_space": false, "oil_resistant": false}) == set()
	rule.excludes == {"P1"} with input as wire({"in_engine_space": false})
}

test_silent_where_nothing_is_known if {
	found({"in_engine_space": true}) == set()
	found({"oil_resistant": false}) == set()
}
