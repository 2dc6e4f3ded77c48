package driploop.rules.conductors.too_small_test

import data.driploop.rules.conductors.too_small as rule

# wire is a positive conductor; given facts replace its own.
wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "lamp.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "size": "made up", "length_mm": 2000,
	},
	facts,
)}}

# found names the limit of each set that applies and finds a breach.
found(facts) := {[one.set, one.limit.size] |
	doc := wire(facts)
	some one in rule.breach with input as doc
	{"subject": "P1", "set": one.set} in rule.applies with input as doc
}

american := {["us-federal", "16 AWG"], ["us-voluntary", "16 AWG"]}

asked(facts) := {one.fact | some one in rule.asks with input as wire(facts)}

# 33 CFR 183.425(e): 16 AWG, 1.309 mm², where separate; (d): 18 AWG, 0.823 mm²,
# in a sheath. The same is reported of ABYC E-11.
test_16_awg_alone if {
	{["us-federal", "16 AWG"], ["us-voluntary", "16 AWG"]} & found({"area_mm2": 1.308, "in_sheath": false}) == american
	american & found({"area_mm2": 1.309, "in_sheath": false}) == set()
}

test_18_awg_in_a_sheath if {
	{["us-federal", "18 AWG"], ["us-voluntary", "18 AWG"]} & found({"area_mm2": 0.822, "in_sheath": true}) != set()
	{one | some one in found({"area_mm2": 0.823, "in_sheath": true}); one[0] in {"us-federal", "us-voluntary"}} == set()
}

test_18_awg_alone if {
	american & found({"area_mm2": 0.823, "in_sheath": false}) == american
}

# 46 CFR 183.340(c): 14 AWG, 2.081 mm², for power; 22 AWG, 0.3255 mm², for control.
test_14_awg_for_power if {
	found({"area_mm2": 2.08, "in_sheath": false}) == {["us-inspected", "14 AWG"]}
	found({"area_mm2": 2.081, "in_sheath": false}) == set()
}

test_22_awg_for_control if {
	not ["us-inspected", "22 AWG"] in found({"role": "control", "area_mm2": 0.3255, "in_sheath": true})
	["us-inspected", "22 AWG"] in found({"role": "control", "area_mm2": 0.3254, "in_sheath": true})
	["us-inspected", "22 AWG"] in found({"duty": "instrument", "area_mm2": 0.3254, "in_sheath": true})
}

# ISO 10133:2012 clause 7.7 as a published excerpt shows it.
test_metric_sizes if {
	["international", "1 mm²"] in found({"area_mm2": 0.99, "in_sheath": false, "length_mm": 201})
	not ["international", "1 mm²"] in found({"area_mm2": 0.99, "in_sheath": false, "length_mm": 200})
	not ["international", "1 mm²"] in found({"area_mm2": 1, "in_sheath": false, "length_mm": 201})
	["international", "0.75 mm²"] in found({"area_mm2": 0.74, "in_sheath": true})
	not ["international", "0.75 mm²"] in found({"area_mm2": 0.75, "in_sheath": true})
	not ["international", "0.75 mm²"] in found({"area_mm2": 0.75, "in_sheath": false, "in_housing": true})
	["international", "0.75 mm²"] in found({"area_mm2": 0.74, "in_sheath": false, "in_housing": true})
}

# 33 CFR 183.425(g).
test_exempt_by_33_cfr if {
	every duty in ["communication", "navigation", "resistance", "ignition-secondary", "cranking"] {
		not ["us-federal", "16 AWG"] in found({"area_mm2": 0.5, "in_sheath": false, "duty": duty, "current_a": 5})
	}
	not ["us-federal", "16 AWG"] in found({"area_mm2": 0.5, "in_sheath": false, "in_housing": true})
}

test_pigtail_at_7_in if {
	american & found({"area_mm2": 0.9, "in_sheath": false, "pigtail": true, "exposed_mm": 177.8}) == american
	american & found({"area_mm2": 0.9, "in_sheath": false, "pigtail": true, "exposed_mm": 177.7}) == set()
	american & found({"area_mm2": 0.9, "in_sheath": false, "pigtail": true}) == set()
	"exposed_mm" in asked({"area_mm2": 0.9, "pigtail": true})
	not "exposed_mm" in asked({"area_mm2": 1.309, "pigtail": true})
}

test_electronic_circuit_at_one_ampere if {
	american & found({"area_mm2": 0.9, "in_sheath": false, "duty": "electronic", "current_a": 1}) == american
	american & found({"area_mm2": 0.9, "in_sheath": false, "duty": "electronic", "current_a": 0.99}) == set()
	"current_a" in asked({"area_mm2": 0.9, "duty": "electronic"})
}

# Reported of ABYC E-11, unlike 33 CFR 183.425(g): only below one ampere.
test_communication_over_one_ampere_in_the_voluntary_set if {
	["us-voluntary", "16 AWG"] in found({"area_mm2": 0.9, "in_sheath": false, "duty": "communication", "current_a": 2})
	not ["us-voluntary", "16 AWG"] in found({"area_mm2": 0.9, "in_sheath": false, "duty": "communication", "current_a": 0.5})
}

test_sheath_is_asked_between_the_sizes_only if {
	asked({"area_mm2": 1.309}) == set()
	asked({"area_mm2": 1}) == {"in_sheath"}
	{one.set | some one in rule.asks with input as wire({"area_mm2": 0.5})} == {"international"}
}

test_bonding_conductor_is_left_to_its_own_rule if {
	found({"role": "bonding", "area_mm2": 0.5, "in_sheath": false}) == set()
}
