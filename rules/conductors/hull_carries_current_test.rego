package driploop.rules.conductors.hull_carries_current_test

import data.driploop.rules.conductors.hull_carries_current as rule

wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "", "bare_from": "", "bare_via": "",
	},
	object.union({"known_role": "bonding"}, facts),
)}}

found(facts) := {one.subject |
	some one in rule.breach with input as wire(facts)
	one.subject in rule.applies with input as wire(facts)
}

test_bonding_as_a_return if {
	found({"returns": true}) == {"P1"}
	found({"returns": false}) == set()
}

# 46 CFR 183.370(a), 169.673(l).
test_engine_starting_is_exempt if {
	found({"returns": true, "duty": "cranking"}) == set()
}

test_returns_themselves_are_left_out if {
	found({"known_role": "negative", "returns": true}) == set()
}

test_silent_where_nothing_is_known if {
	found({}) == set()
}
