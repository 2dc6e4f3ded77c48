package driploop.rules.conductors.overloaded_in_bundle_test

import data.driploop.rules.conductors.overloaded_in_bundle as rule

# wire may carry 60 A on its own; given facts replace its own.
wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "size": "10 AWG",
	},
	facts,
)}}

limits(facts) := {found.limit.current_a |
	some found in rule.breach with input as wire(facts)
	"P1" in rule.applies with input as wire(facts)
}

# Seven together: 60 A times 0.50 by the factors of 33 CFR 183.425 Table 5 note 2,
# reported of newer editions of ABYC E-11 for direct current too.
test_at_the_bundled_amperage if {
	limits({"bundle_size": 7, "bundled_a": 30, "current_a": 30, "load_pct": 50}) == set()
	limits({"bundle_size": 7, "bundled_a": 30, "current_a": 30.1, "load_pct": 50.2}) == {30}
}

test_two_together_take_no_factor if {
	limits({"bundle_size": 2, "bundled_a": 60, "current_a": 59, "load_pct": 98.3}) == set()
	rule.excludes == {"P1"} with input as wire({"bundle_size": 2, "load_pct": 98.3})
	rule.excludes == set() with input as wire({"bundle_size": 3, "load_pct": 98.3})
}

# The hardest factor, 0.40: 24 A of 60 A pass in any bundle.
test_bundle_is_asked_above_the_hardest_factor_only if {
	rule.asks == set() with input as wire({"load_pct": 40})
	rule.applies == {"P1"} with input as wire({"load_pct": 40})
	rule.asks == {{"subject": "P1", "fact": "bundled_a"}} with input as wire({"load_pct": 40.2})
	rule.applies == set() with input as wire({"load_pct": 40.2})
}

test_bonding_and_cranking_are_left_out if {
	rule.excludes == {"P1"} with input as wire({"role": "bonding"})
	rule.excludes == {"P1"} with input as wire({"duty": "cranking"})
}

test_silent_without_the_current if {
	limits({"bundle_size": 7, "bundled_a": 30, "load_pct": 90}) == set()
}
