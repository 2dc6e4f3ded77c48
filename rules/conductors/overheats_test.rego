package driploop.rules.conductors.overheats_test

import data.driploop.rules.conductors.overheats as rule

wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "", "bare_from": "", "bare_via": "", "behind_device": true,
		"size": "8 AWG", "insulation_degc": 105,
	},
	facts,
)}}

when(facts) := {found.figures.when |
	some found in rule.breach with input as wire(facts)
	found.subject in rule.applies with input as wire(facts)
}

test_at_the_rating if {
	when({"temperature_degc": 105, "stall_degc": 105}) == set()
	when({"temperature_degc": 105.1, "stall_degc": 105}) == {"in normal use"}
	when({"temperature_degc": 90, "stall_degc": 105.1}) == {"until a stalled motor is cut off"}
}

test_what_it_leaves_out if {
	when({"role": "bonding", "temperature_degc": 200, "stall_degc": 200}) == set()
	when({"duty": "cranking", "temperature_degc": 200, "stall_degc": 200}) == set()
}

test_silent_without_a_temperature if {
	when({}) == set()
}
