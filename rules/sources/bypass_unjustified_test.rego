package driploop.rules.sources.bypass_unjustified_test

import data.driploop.rules.sources.bypass_unjustified as rule

doc(facts) := {"loads": {"lamp": object.union({"path": "components.lamp", "kind": "lamp", "isolated": false, "behind_battery": true}, facts)}}

sets(facts) := {f.set | some f in rule.breach with input as doc(facts)}

test_what_may_stay_live if {
	sets({"purpose": "bilge-pump"}) == set()
	sets({"purpose": "alarm"}) == set()
	sets({"purpose": "navigation"}) == set()
	sets({"purpose": "blower"}) == {"uk"}
	sets({"purpose": "radio"}) == {"uk"}
}

test_all_else_may_not if {
	sets({"purpose": "cabin-light"}) == {"uk", "us-voluntary"}
	sets({"purpose": "cranking"}) == {"uk", "us-voluntary"}
}

test_behind_a_switch if {
	sets({"purpose": "cabin-light", "isolated": true}) == set()
	rule.asks == set() with input as doc({"isolated": true})
}

test_silent_while_the_purpose_is_missing if {
	sets({}) == set()
	count(rule.asks) == 1 with input as doc({})
}

test_no_switch_at_all_is_another_rule if {
	rule.excludes == {"lamp"} with input as doc({"behind_battery": false})
	rule.applies == {"lamp"} with input as doc({})
}
