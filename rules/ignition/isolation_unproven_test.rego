package driploop.rules.ignition.isolation_unproven_test

import data.driploop.rules.ignition.isolation_unproven

isolated(facts) := {"components": {"fan": object.union({"path": "components.fan", "kind": "blower", "electric": true, "petrol_near": true, "ignition_protected": false}, facts)}}

fails(input_facts) := {found.figures.fails | some found in isolation_unproven.breach with input as input_facts}

test_two_feet_at_the_limit_and_just_under if {
	fails(isolated({"isolation_means": "distance", "isolation_mm": 609.6, "isolation_open_air": true})) == set()
	fails(isolated({"isolation_means": "distance", "isolation_mm": 609.5, "isolation_open_air": true})) == {"the distance is too small"}
	fails(isolated({"isolation_means": "distance", "isolation_mm": 700, "isolation_open_air": false})) == {"the space between is not open to the air"}
}

test_height_against_the_source if {
	fails(isolated({"isolation_means": "lower-with-means", "isolation_height": "below"})) == set()
	fails(isolated({"isolation_means": "lower-with-means", "isolation_height": "level"})) == {"it is not lower than the petrol source"}
	fails(isolated({"isolation_means": "deck", "isolation_height": "above"})) == set()
	fails(isolated({"isolation_means": "deck", "isolation_height": "below"})) == {"it is not higher than the petrol source"}
}

test_bulkhead_by_twelve_inches_or_a_third if {
	fails(isolated({"isolation_means": "bulkhead", "water_held_mm": 304.8, "seepage_m3": 0})) == set()
	fails(isolated({"isolation_means": "bulkhead", "water_held_mm": 250, "bulkhead_third_mm": 240, "seepage_m3": 0})) == set()
	fails(isolated({"isolation_means": "bulkhead", "water_held_mm": 230, "bulkhead_third_mm": 240, "seepage_m3": 0})) == {"it holds too little water"}
	fails(isolated({"isolation_means": "bulkhead", "water_held_mm": 305, "seepage_m3": 0.00001})) == {"it lets through too much water"}
}

test_asks_what_the_means_needs if {
	{asked.fact | some asked in isolation_unproven.asks} == {"isolation_mm", "isolation_open_air"} with input as isolated({"isolation_means": "distance"})
	{asked.fact | some asked in isolation_unproven.asks} == {"water_held_mm", "seepage_m3", "bulkhead_third_mm"} with input as isolated({"isolation_means": "bulkhead", "water_held_mm": 200})
}

test_applies_only_to_claimed_isolation if {
	isolation_unproven.applies == {"fan"} with input as isolated({"isolation_means": "deck"})
	isolation_unproven.applies == set() with input as isolated({"isolation_means": "none"})
	isolation_unproven.excludes == {"fan"} with input as isolated({"ignition_protected": true})
	isolation_unproven.excludes == {"fan"} with input as isolated({"petrol_near": false})
	isolation_unproven.excludes == {"fan"} with input as isolated({"electric": false})
}
