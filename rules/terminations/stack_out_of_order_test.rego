package driploop.rules.terminations.stack_out_of_order_test

import data.driploop.rules.terminations.stack_out_of_order as rule

doc(facts) := {"studs": {"bar.a": object.union({"path": "components.bar", "on": "bar.a", "landed": 2}, facts)}}

test_inverted_names_both if {
	found := rule.breach with input as doc({"inverted": true, "upper": "P1.from", "lower": "P2.from"})
	{f.figures | some f in found} == {{"upper": "P1.from", "lower": "P2.from"}}
}

test_silent_in_order_and_while_unknown if {
	rule.breach == set() with input as doc({"inverted": false})
	rule.breach == set() with input as doc({})
}

test_one_conductor_makes_no_stack if {
	rule.applies == set() with input as doc({"landed": 1})
	rule.applies == {"bar.a"} with input as doc({"landed": 2})
}
