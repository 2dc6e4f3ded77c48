package driploop.rules.protection.grounded_side_opened_test

import data.driploop.rules.protection.grounded_side_opened as rule

part(facts) := {"components": {"cut": object.union({"path": "components.cut", "kind": "switch", "electric": true, "opener": true}, facts)}}

found(facts) := {one.subject | some one in rule.breach with input as part(facts)}

test_switch_in_the_return if {
	found({"on_grounded": true, "opens": "grounded"}) == {"cut"}
	found({"on_grounded": true, "opens": "ungrounded"}) == {"cut"}
}

test_two_pole_switch if {
	found({"on_grounded": true, "opens": "both"}) == set()
}

test_fuse_in_the_return if {
	found({"kind": "fuse", "on_grounded": true}) == {"cut"}
	found({"kind": "fuse", "on_grounded": true, "opens": "both"}) == {"cut"}
}

test_silent_in_the_live_side if {
	found({"on_grounded": false, "opens": "ungrounded"}) == set()
	found({"kind": "fuse", "on_grounded": false}) == set()
}

test_what_it_opens_is_asked_in_the_return_only if {
	rule.asks == {{"subject": "cut", "fact": "opens"}} with input as part({"on_grounded": true})
	rule.asks == set() with input as part({"on_grounded": false})
	rule.asks == set() with input as part({"kind": "fuse", "on_grounded": true})
}

test_other_equipment_is_left_out if {
	rule.applies == set() with input as part({"kind": "motor", "opener": false})
}
