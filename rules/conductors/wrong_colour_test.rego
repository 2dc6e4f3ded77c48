package driploop.rules.conductors.wrong_colour_test

import data.driploop.rules.conductors.wrong_colour as rule

wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true,
	},
	object.union({"known_role": object.get(facts, "role", "positive")}, facts),
)}}

found(role, colour) := {one.subject | some one in rule.breach with input as wire({"role": role, "colour": colour})}

# Colours of ABYC E-11 as republished.
test_colours_of_the_table_are_silent if {
	every colour in ["red", "orange", "brown", "brown/yellow", "purple", "grey", "dark-blue", "light-blue", "tan", "pink", "yellow/red", "blue/white", "green/white"] {
		found("positive", colour) == set()
	}
	every colour in ["black", "yellow", "black/yellow"] {
		found("negative", colour) == set()
	}
	every colour in ["green", "green/yellow", "bare"] {
		found("bonding", colour) == set()
	}
}

test_colours_of_the_other_pole if {
	every colour in ["black", "white", "black/yellow", "yellow/black", "clear"] {
		found("positive", colour) == {"P1"}
	}
	every colour in ["red", "brown", "white", "blue"] {
		found("negative", colour) == {"P1"}
	}
	every colour in ["black", "yellow", "red", "green/white"] {
		found("bonding", colour) == {"P1"}
	}
}

test_green_is_left_to_its_own_rule if {
	found("positive", "green") == set()
	found("positive", "green/yellow") == set()
	found("negative", "green") == set()
	found("negative", "green/yellow") == set()
}

test_yellow_feeds_blowers_only if {
	count(rule.breach) == 0 with input as wire({"colour": "yellow", "for_blower": true})
	count(rule.breach) == 1 with input as wire({"colour": "yellow", "for_blower": false})
	rule.asks == {{"subject": "P1", "fact": "for_blower"}} with input as wire({"colour": "yellow"})
	rule.asks == set() with input as wire({"colour": "red"})
}

test_control_conductors_are_left_out if {
	rule.applies == set() with input as wire({"role": "control", "colour": "black"})
	rule.excludes == {"P1"} with input as wire({"role": "control", "colour": "black"})
}

test_silent_without_a_colour if {
	count(rule.breach) == 0 with input as wire({})
}
