package driploop.rules.conductors.parallels_unequal_test

import data.driploop.rules.conductors.parallels_unequal as rule

wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "", "bare_from": "", "bare_via": "",
		"parallel_with": "P2",
	},
	facts,
)}}

found(facts) := {one.figures.others | some one in rule.breach with input as wire(facts)}

test_at_10_per_cent if {
	found({"share_off_pct": 10}) == set()
	found({"share_off_pct": 10.1}) == {"P2"}
}

test_single_conductors_are_left_out if {
	rule.applies == set() with input as wire({"parallel_with": ""})
	rule.applies == {"P1"} with input as wire({})
}

test_silent_without_the_resistances if {
	found({}) == set()
}
