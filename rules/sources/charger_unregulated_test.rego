package driploop.rules.sources.charger_unregulated_test

import data.driploop.rules.sources.charger_unregulated as rule

doc(facts) := {"chargers": {"charger": object.union({"path": "components.charger", "kind": "charger", "battery_spaces": []}, facts)}}

test_unregulated if {
	rule.breach == {{"subject": "charger"}} with input as doc({"regulated": false})
	rule.breach == set() with input as doc({"regulated": true})
	rule.breach == set() with input as doc({})
}
