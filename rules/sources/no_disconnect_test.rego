package driploop.rules.sources.no_disconnect_test

import data.driploop.rules.sources.no_disconnect as rule

doc(facts) := {"batteries": {"house": object.union({"path": "components.house", "cranking_given": false, "bypass": []}, facts)}}

sets(facts) := {f.set | some f in rule.breach with input as doc(object.union({"switched": false}, facts))}

test_every_battery_but_for_the_voluntary_standard if {
	sets({"cranking_given": true, "cranking_a": 500}) == {"us-inspected", "uk"}
	sets({"switched": true, "switch_accessible": true, "cranking_given": true, "cranking_a": 1200}) == set()
}

test_by_cold_cranking_current if {
	sets({"cranking_given": true, "cranking_a": 800}) == {"us-inspected", "uk"}
	sets({"cranking_given": true, "cranking_a": 801}) == {"us-inspected", "uk", "us-voluntary"}
}

test_by_capacity_only_where_that_is_not_known if {
	sets({"capacity_ah": 101}) == {"us-inspected", "uk", "us-voluntary"}
	sets({"capacity_ah": 100}) == {"us-inspected", "uk"}
	sets({"cranking_given": true, "cranking_a": 500, "capacity_ah": 220}) == {"us-inspected", "uk"}
}

test_asks_for_the_size_only_without_a_switch if {
	{a.fact | some a in rule.asks} == {"switch_accessible"} with input as doc({"switched": true})
	{a.fact | some a in rule.asks} == {"cranking_a", "capacity_ah"} with input as doc({"switched": false})
}

test_a_switch_out_of_reach if {
	sets({"switched": true, "switch_accessible": false}) == {"us-inspected", "uk"}
	sets({"switched": true, "switch_accessible": true}) == set()
}

test_silent_while_unknown if {
	rule.breach == set() with input as doc({"cranking_a": 1200})
}
