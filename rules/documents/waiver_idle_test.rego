package driploop.rules.documents.waiver_idle_test

import data.driploop.rules.documents.waiver_idle as rule

waiver(facts) := {"waivers": {"0000": object.union({"path": "waivers[0]", "lacks": [], "dated": true, "rule": "a/b", "at": "conductors.P1"}, facts)}}

subjects(facts) := {f.subject | some f in rule.breach with input as waiver(facts)}

test_fires_where_nothing_is_waived if {
	subjects({"waives": false}) == {"0000"}
}

test_silent_where_something_is_or_may_be if {
	subjects({"waives": true}) == set()
	subjects({}) == set()
}
