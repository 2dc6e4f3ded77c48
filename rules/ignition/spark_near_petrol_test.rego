package driploop.rules.ignition.spark_near_petrol_test

import data.driploop.rules.ignition.spark_near_petrol

in_bay(facts) := {"components": {"fan": object.union({"path": "components.fan", "kind": "blower", "electric": true, "petrol_near": true}, facts)}}

subjects(input_facts) := {found.subject | some found in spark_near_petrol.breach with input as input_facts}

test_fires_without_protection_or_isolation if {
	subjects(in_bay({"ignition_protected": false, "isolation_means": "none"})) == {"fan"}
}

test_silent_where_protected_or_isolated if {
	subjects(in_bay({"ignition_protected": true})) == set()
	subjects(in_bay({"ignition_protected": false, "isolation_means": "bulkhead"})) == set()
}

test_asks_for_isolation_only_without_protection if {
	spark_near_petrol.asks == {{"subject": "fan", "fact": "isolation_means"}} with input as in_bay({"ignition_protected": false})
	spark_near_petrol.asks == set() with input as in_bay({"ignition_protected": true})
}

test_applies_only_near_petrol if {
	spark_near_petrol.applies == {"fan"} with input as in_bay({})
	spark_near_petrol.applies == set() with input as in_bay({"petrol_near": false})
}

test_leaves_out_what_cannot_spark if {
	spark_near_petrol.excludes == {"fan"} with input as in_bay({"electric": false})
	spark_near_petrol.excludes == set() with input as in_bay({})
}
