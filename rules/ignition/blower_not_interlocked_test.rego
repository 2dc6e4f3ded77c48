package driploop.rules.ignition.blower_not_interlocked_test

import data.driploop.rules.ignition.blower_not_interlocked as rule

fan(petrol, facts) := {
	"vessel": {"path": "vessel", "petrol": petrol},
	"loads": {"fan": object.union({"path": "components.fan", "kind": "blower", "petrol_near": true, "before_start": true, "switch_inside": false}, facts)},
}

fails(facts) := {f.figures.fails | some f in rule.breach with input as fan(true, facts)}

test_fires_without_interlock if {
	fails({"before_start": false}) == {"starter and ignition work before it runs"}
}

test_fires_on_a_switch_inside if {
	fails({"switch_inside": true}) == {"its switch stands in the space that it clears"}
	fails({"switch_inside": true, "petrol_near": false, "purpose": "blower"}) == set()
}

test_silent_as_asked if {
	fails({}) == set()
}

test_applies_where_vapour_is_or_by_purpose if {
	rule.applies == {"fan"} with input as fan(true, {})
	rule.applies == {"fan"} with input as fan(true, {"petrol_near": false, "purpose": "blower"})
	rule.applies == set() with input as fan(false, {"petrol_near": false, "purpose": "blower"})
	rule.applies == set() with input as fan(true, {"kind": "pump"})
}

test_leaves_out_other_fans if {
	rule.excludes == {"fan"} with input as fan(true, {"petrol_near": false, "purpose": "ventilation"})
	rule.excludes == {"fan"} with input as fan(false, {"petrol_near": false, "purpose": "blower"})
	rule.excludes == {"fan"} with input as fan(true, {"kind": "lamp"})
	rule.excludes == set() with input as fan(true, {"petrol_near": false})
}
