package driploop.rules.routing.no_drain_test

import data.driploop.rules.routing.no_drain as rule

doc(facts) := {"segments": {"P1[0]": object.union({"path": "conductors.P1.route[0]", "in": "conduit"}, facts)}}

test_level_and_without_holes if {
	rule.breach == {{"subject": "P1[0]"}} with input as doc({"undrained": true})
	rule.breach == set() with input as doc({"undrained": false})
	rule.breach == set() with input as doc({})
}

test_only_in_conduit if {
	rule.applies == {"P1[0]"} with input as doc({})
	rule.applies == set() with input as doc({"in": "trunking"})
	rule.excludes == {"P1[0]"} with input as doc({"in": "trunking"})
	rule.excludes == set() with input as doc({})
}
