package driploop.rules.sources.battery_with_petrol_test

import data.driploop.rules.sources.battery_with_petrol as rule

doc(facts) := {"batteries": {"house": object.union({"path": "components.house", "cranking_given": false, "bypass": []}, facts)}}

breached(facts) := {f.subject | some f in rule.breach with input as doc(facts)}

test_unscreened if {
	every means in ["none", "distance", "lower-with-means"] {
		breached({"petrol_near": true, "isolation_means": means}) == {"house"}
	}
}

test_screened if {
	every means in ["bulkhead", "deck", "enclosure"] {
		breached({"petrol_near": true, "isolation_means": means}) == set()
	}
	breached({"petrol_near": true}) == set()
}

test_no_petrol_near if {
	rule.excludes == {"house"} with input as doc({"petrol_near": false})
	rule.applies == {"house"} with input as doc({"petrol_near": true})
}
