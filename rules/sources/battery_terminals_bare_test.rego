package driploop.rules.sources.battery_terminals_bare_test

import data.driploop.rules.sources.battery_terminals_bare as rule

doc(facts) := {"batteries": {"house": object.union({"path": "components.house", "cranking_given": false, "bypass": []}, facts)}}

sets(facts) := {f.set | some f in rule.breach with input as doc(facts)}

test_each_set_by_its_terminals if {
	sets({"ungrounded_covered": false, "terminals_covered": false}) == {"us-federal", "us-voluntary", "international"}
	sets({"ungrounded_covered": true, "terminals_covered": false}) == {"international"}
	sets({"ungrounded_covered": true, "terminals_covered": true}) == set()
}

test_silent_while_unknown if {
	sets({}) == set()
}
