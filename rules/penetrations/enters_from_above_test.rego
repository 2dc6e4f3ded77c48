package driploop.rules.penetrations.enters_from_above_test

import data.driploop.rules.penetrations.enters_from_above as rule

hole(facts) := {"penetrations": {"box-hole": object.union({"path": "penetrations.box-hole", "touches": [], "maker_allows": []}, facts)}}

subjects(facts) := {f.subject | some f in rule.breach with input as hole(facts)}

test_fires_on_a_top_entry_where_wet if {
	every exposure in ["wet", "washed", "immersed"] {
		subjects({"exposure": exposure, "enters_top": true}) == {"box-hole"}
	}
}

test_silent_elsewhere if {
	subjects({"exposure": "wet", "enters_top": false}) == set()
	subjects({"exposure": "damp", "enters_top": true}) == set()
	subjects({"enters_top": true}) == set()
	subjects({"exposure": "wet"}) == set()
}

test_applies_where_wet if {
	rule.applies == {"box-hole"} with input as hole({"exposure": "washed"})
	rule.excludes == {"box-hole"} with input as hole({"exposure": "damp"})
	rule.excludes == set() with input as hole({})
}
