package driploop.rules.conductors.sheath_tail_long_test

import data.driploop.rules.conductors.sheath_tail_long as rule

wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "", "bare_from": "", "bare_via": "",
		"size": "18 AWG", "area_mm2": 0.823, "in_sheath": true,
	},
	facts,
)}}

sets(facts) := {applied.set |
	some applied in rule.applies with input as wire(facts)
	some found in rule.breach with input as wire(facts)
	found.set == applied.set
}

# 33 CFR 183.425(f): 30 in is 762 mm.
test_at_30_in if {
	sets({"sheath_tail_mm": 762}) == set()
	sets({"sheath_tail_mm": 762.1}) == {"us-federal", "us-voluntary"}
}

# ISO 10133:2012 clause 7.7, as an excerpt shows it.
test_at_800_mm if {
	sets({"sheath_tail_mm": 800}) == {"us-federal", "us-voluntary"}
	sets({"sheath_tail_mm": 801}) == {"us-federal", "us-voluntary", "international"}
}

test_larger_cores_are_left_out if {
	sets({"size": "16 AWG", "area_mm2": 1.309, "sheath_tail_mm": 2000}) == set()
	sets({"size": "1 mm2", "area_mm2": 1, "sheath_tail_mm": 2000}) == {"us-federal", "us-voluntary"}
	sets({"in_sheath": false, "sheath_tail_mm": 2000}) == set()
}

test_exempt_by_33_cfr_alone if {
	sets({"duty": "communication", "sheath_tail_mm": 2000}) == {"us-voluntary", "international"}
	sets({"in_housing": true, "sheath_tail_mm": 2000}) == {"international"}
}

test_silent_without_the_tail if {
	sets({}) == set()
}
