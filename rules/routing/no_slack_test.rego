package driploop.rules.routing.no_slack_test

import data.driploop.rules.routing.no_slack as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos"}, facts)}}

breached(facts) := {found.figures.slack | some found in rule.breach with input as doc(facts)}

test_two_is_enough if {
	breached({"slack": "two"}) == set()
	breached({}) == set()
}

test_one_and_none_are_not if {
	breached({"slack": "one"}) == {"one re-termination"}
	breached({"slack": "none"}) == {"no re-termination"}
}
