package driploop.rules.protection.charging_source_unprotected_test

import data.driploop.rules.protection.charging_source_unprotected as rule

# wire is the output of an alternator that does not limit itself; given facts
# replace its own.
wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "alternator.pos", "to": "bus.a", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "alternator", "output_limits": false,
	},
	facts,
)}}

# sets names the practice sets that apply and find a breach.
sets(facts) := {applied.set |
	doc := wire(facts)
	some applied in rule.applies with input as doc
	some found in rule.breach with input as doc
	object.get(found, "set", applied.set) == applied.set
}

test_bare_output if {
	sets({"output_bare": true}) == {"us-federal", "us-voluntary", "international"}
}

# 33 CFR 183.460(b) names alternators and generators.
test_bare_output_of_a_charger if {
	sets({"output_of": "charger", "output_bare": true}) == {"us-voluntary", "international"}
}

# ISO 13297:2020 with Amd 1:2022, 12.3: 1.8 m.
test_device_at_1800_mm if {
	sets({"output_bare": false, "output_mm": 1800}) == set()
	sets({"output_bare": false, "output_mm": 1800.1}) == {"international"}
}

test_length_is_asked_behind_a_device_only if {
	rule.asks == {{"subject": "P1", "set": "international", "fact": "output_mm"}} with input as wire({"output_bare": false})
	rule.asks == set() with input as wire({"output_bare": true})
}

test_self_limiting_sources_are_exempt if {
	"P1" in rule.excludes with input as wire({"output_limits": true})
	sets({"output_limits": true, "output_bare": true}) == set()
}

test_other_conductors_are_left_out if {
	"P1" in rule.excludes with input as wire({"output_of": ""})
	rule.applies == set() with input as wire({"output_of": ""})
}
