package driploop.rules.equipment.contact_underrated_test

import data.driploop.rules.equipment.contact_underrated as rule

contact(facts) := {"contacts": {"switch": object.union(
	{
		"path": "components.switch", "component": "switch", "kind": "switch", "purpose": "normal", "disconnects": false,
		"rating_a": 16, "intermittent_a": 20, "nominal_v": 12, "current_a": 5, "surge_a": 0,
		"lamps_a": 0, "motors_a": 0, "coils_a": 0, "plain_a": 5,
	},
	facts,
)}}

loads(facts) := {f.figures.load_a | some f in rule.breach with input as contact(facts)}

asked(facts) := {a.fact | some a in rule.asks with input as contact(facts)}

test_current_at_the_rating_and_over if {
	loads({"kind": "relay", "current_a": 16}) == set()
	loads({"kind": "relay", "current_a": 16.1}) == {16.1}
}

test_surge_within_the_intermittent_rating_and_over if {
	loads({"surge_a": 20}) == set()
	loads({"surge_a": 20.1}) == {20.1}
	loads({"kind": "connector", "surge_a": 40}) == set()
}

# AC 43.13-1B table 11-4: at 12 V lamps 5, inductive 2, resistive 1, motors 2; at 28 V 8, 4, 2, 3.
test_factors_at_twelve_volts if {
	loads({"plain_a": 16}) == set()
	loads({"plain_a": 0, "lamps_a": 3.2}) == set()
	loads({"plain_a": 0, "lamps_a": 3.3}) == {16.5}
	loads({"plain_a": 0, "motors_a": 8}) == set()
	loads({"plain_a": 0, "motors_a": 8.5}) == {17}
	loads({"plain_a": 0, "coils_a": 8.5}) == {17}
	loads({"plain_a": 4, "lamps_a": 1, "motors_a": 2, "coils_a": 2}) == {17}
}

test_factors_at_twenty_four_volts if {
	loads({"nominal_v": 24, "plain_a": 8}) == set()
	loads({"nominal_v": 24, "plain_a": 8.5}) == {17}
	loads({"nominal_v": 24, "plain_a": 0, "lamps_a": 2.125}) == {17}
	loads({"nominal_v": 24, "plain_a": 0, "motors_a": 6}) == {18}
	loads({"nominal_v": 24, "plain_a": 0, "coils_a": 4.25}) == {17}
}

test_factors_are_a_caution_for_switches if {
	{f.severity | some f in rule.breach} == {"caution"} with input as contact({"motors_a": 8.5})
	loads({"kind": "relay", "motors_a": 8.5}) == set()
	loads({"nominal_v": 48, "motors_a": 8.5}) == set()
}

test_leaves_battery_switches_to_their_own_rule if {
	rule.applies == set() with input as contact({"purpose": "main"})
	loads({"disconnects": true, "motors_a": 8.5}) == set()
	rule.applies == {"switch"} with input as contact({})
}

test_asks_by_kind if {
	asked({"kind": "connector"}) == set()
	asked({"kind": "relay"}) == {"surge_a"}
	asked({"kind": "relay", "surge_a": 17}) == {"surge_a", "intermittent_a"}
	asked({}) == {"surge_a", "nominal_v", "lamps_a", "motors_a", "coils_a", "plain_a"}
}
