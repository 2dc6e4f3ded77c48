package driploop.rules.equipment.deck_switch_unguarded_test

import data.driploop.rules.equipment.deck_switch_unguarded as rule

foot(facts) := {"switches": {"foot": object.union({"path": "components.foot", "kind": "switch", "purpose": "motor", "disconnects": false}, facts)}}

subjects(facts) := {f.subject | some f in rule.breach with input as foot(facts)}

test_fires_on_an_open_deck_switch if {
	subjects({"deck": true, "guarded": false}) == {"foot"}
}

test_silent_otherwise if {
	subjects({"deck": true, "guarded": true}) == set()
	subjects({"deck": false, "guarded": false}) == set()
	subjects({"deck": true}) == set()
}

test_applies_to_deck_switches if {
	rule.applies == {"foot"} with input as foot({"deck": true})
	rule.excludes == {"foot"} with input as foot({"deck": false})
	rule.excludes == {"foot"} with input as foot({"kind": "relay", "deck": true})
	rule.excludes == set() with input as foot({})
}
