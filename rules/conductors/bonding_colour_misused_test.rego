package driploop.rules.conductors.bonding_colour_misused_test

import data.driploop.rules.conductors.bonding_colour_misused as rule

wire(facts) := {"conductors": {"N1": object.union(
	{
		"path": "conductors.N1", "from": "pump.neg", "to": "bus.a", "role": "negative", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": false,
	},
	facts,
)}}

found(facts) := {one.subject |
	some one in rule.breach with input as wire(facts)
	one.subject in rule.applies with input as wire(facts)
}

test_green_on_a_return if {
	found({"colour": "green"}) == {"N1"}
	found({"colour": "green/yellow"}) == {"N1"}
	found({"role": "control", "colour": "green"}) == {"N1"}
}

# Green with another stripe is a colour of trim and tilt circuits.
test_green_with_another_stripe if {
	found({"role": "positive", "colour": "green/white"}) == set()
}

test_silent_on_bonding if {
	found({"role": "bonding", "colour": "green"}) == set()
}

test_silent_on_other_colours if {
	found({"colour": "black"}) == set()
	found({}) == set()
}
