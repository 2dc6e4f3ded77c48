package driploop.rules.routing.exposed_to_harm_test

import data.driploop.rules.routing.exposed_to_harm as rule

doc(facts) := {"segments": {"P1[0]": object.union({"path": "conductors.P1.route[0]", "open_walkway": false, "open_machinery": false}, facts)}}

breached(facts) := {found.figures.harm | some found in rule.breach with input as doc(facts)}

test_silent_where_nothing_threatens if {
	breached({"moving_parts_mm": 10}) == set()
}

test_walkway if {
	breached({"open_walkway": true}) == {"crosses a walkway"}
}

# 24 in = 609.6 mm.
test_machinery_within_24_inches if {
	breached({"open_machinery": true, "moving_parts_mm": 609.6}) == {"runs close to moving machinery"}
	breached({"open_machinery": true, "moving_parts_mm": 609.7}) == set()
	breached({"open_machinery": true}) == set()
}

test_asks_how_near_machinery_is if {
	count(rule.asks) == 1 with input as doc({"open_machinery": true})
	rule.asks == set() with input as doc({})
}
