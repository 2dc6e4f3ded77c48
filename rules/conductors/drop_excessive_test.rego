package driploop.rules.conductors.drop_excessive_test

import data.driploop.rules.conductors.drop_excessive as rule

# load is a lamp on 12 V; given facts replace its own.
load(facts) := {"loads": {"lamp": object.union(
	{
		"path": "components.lamp", "kind": "lamp", "devices": [], "switches": [], "isolated_by": [],
		"drop_v": 1, "nominal_v": 12,
	},
	facts,
)}}

# found is the limit of each set that finds a breach.
found(facts) := {[one.set, one.limit.drop_pct] | some one in rule.breach with input as load(facts)}

asked(facts) := {one.set | some one in rule.asks with input as load(facts)}

# 3 % and 10 %: ABYC E-11 as reported; ISO 10133 as an excerpt lists its critical
# circuits. 10 %: 46 CFR 183.340(p), 28.370(b), 169.672(c).
test_other_load_at_10_per_cent if {
	found({"purpose": "cabin-light", "drop_class": "other", "drop_pct": 10}) == set()
	found({"purpose": "cabin-light", "drop_class": "other", "drop_pct": 10.01}) == {["us-voluntary", 10], ["us-inspected", 10], ["international", 10]}
}

test_recorded_class_at_3_per_cent if {
	found({"purpose": "other", "drop_class": "critical", "drop_pct": 3}) == set()
	found({"purpose": "other", "drop_class": "critical", "drop_pct": 3.01}) == {["us-voluntary", 3], ["international", 3]}
}

test_navigation_light_is_critical_whatever_its_class if {
	found({"purpose": "navigation-light", "drop_class": "other", "drop_pct": 3.01}) == {["us-voluntary", 3], ["international", 3]}
	found({"purpose": "blower", "drop_pct": 3.01}) == {["us-voluntary", 3], ["international", 3]}
}

# The issuing body's own answer on E-11 of July 2015; ISO names bilge pumps.
test_bilge_pump_is_critical_in_the_international_set_alone if {
	found({"kind": "pump", "purpose": "bilge-pump", "drop_class": "other", "drop_pct": 5}) == {["international", 3]}
}

test_electronic_equipment_in_the_voluntary_set if {
	["us-voluntary", 3] in found({"kind": "electronics", "purpose": "entertainment", "drop_class": "other", "drop_pct": 3.5})
	not ["international", 3] in found({"kind": "electronics", "purpose": "entertainment", "drop_class": "other", "drop_pct": 3.5})
}

test_class_is_asked_between_the_limits_only if {
	asked({"drop_pct": 3}) == set()
	asked({"drop_pct": 3.1}) == {"us-voluntary", "international"}
	asked({"drop_pct": 10}) == {"us-voluntary", "international"}
	asked({"drop_pct": 10.1}) == set()
}

test_limit_from_memory_is_a_caution if {
	some one in rule.breach with input as load({"drop_pct": 12})
	one.set == "international"
	one.severity == "caution"
	one.clause == "4.7, 4.8, other circuits"
}

test_silent_without_the_drop if {
	found({"purpose": "navigation-light"}) == set()
}
