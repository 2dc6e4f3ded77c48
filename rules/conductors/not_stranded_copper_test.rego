package driploop.rules.conductors.not_stranded_copper_test

import data.driploop.rules.conductors.not_stranded_copper as rule

wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "", "bare_from": "", "bare_via": "",
		"material": "copper", "stranded": true,
	},
	facts,
)}}

sets(facts) := {applied.set |
	some applied in rule.applies with input as wire(facts)
	some found in rule.breach with input as wire(facts)
	found.set == applied.set
}

test_stranded_copper_is_silent if {
	sets({}) == set()
}

test_solid_wire if {
	sets({"stranded": false}) == {"us-federal", "us-inspected", "us-voluntary", "international"}
}

test_aluminium if {
	sets({"material": "aluminium"}) == {"us-federal", "us-inspected", "international"}
}

# 33 CFR 183.425(g).
test_exempt_by_33_cfr_alone if {
	every facts in [{"duty": "cranking"}, {"duty": "communication"}, {"in_housing": true}, {"pigtail": true, "exposed_mm": 177.7}, {"duty": "electronic", "current_a": 0.9}] {
		sets(object.union(facts, {"stranded": false})) == {"us-inspected", "us-voluntary", "international"}
	}
	"us-federal" in sets({"pigtail": true, "exposed_mm": 177.8, "stranded": false})
	"us-federal" in sets({"duty": "electronic", "current_a": 1, "stranded": false})
}

test_lengths_are_asked_of_poor_conductors_only if {
	{one.fact | some one in rule.asks with input as wire({"pigtail": true, "stranded": false})} == {"stranded", "exposed_mm"}
	{one.fact | some one in rule.asks with input as wire({"pigtail": true})} == {"stranded"}
}

test_bonding_is_left_out if {
	sets({"role": "bonding", "stranded": false}) == set()
}
