package driploop.rules.conductors.insulation_too_cool_test

import data.driploop.rules.conductors.insulation_too_cool as rule

wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "", "bare_from": "", "bare_via": "",
	},
	facts,
)}}

limits(facts) := {one.limit.insulation_degc | some one in rule.breach with input as wire(facts)}

# Reported of ABYC E-11: 60 °C dry, 75 °C in engine spaces.
test_at_60_degrees if {
	limits({"insulation_degc": 59, "in_engine_space": false}) == {60}
	limits({"insulation_degc": 60, "in_engine_space": false}) == set()
}

test_at_75_degrees_in_an_engine_space if {
	limits({"insulation_degc": 74, "in_engine_space": true}) == {75}
	limits({"insulation_degc": 75, "in_engine_space": true}) == set()
	limits({"insulation_degc": 60}) == set()
}

test_space_is_asked_between_the_limits_only if {
	count(rule.asks) == 1 with input as wire({"insulation_degc": 60})
	count(rule.asks) == 0 with input as wire({"insulation_degc": 75})
	count(rule.asks) == 0 with input as wire({"insulation_degc": 59})
}
