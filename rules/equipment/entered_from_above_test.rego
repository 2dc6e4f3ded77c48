package driploop.rules.equipment.entered_from_above_test

import data.driploop.rules.equipment.entered_from_above as rule

part(facts) := {"components": {"box": object.union({"path": "components.box", "kind": "relay", "electric": true, "exposure": "wet"}, facts)}}

subjects(facts) := {f.subject | some f in rule.breach with input as part(facts)}

test_fires_on_a_top_entry if {
	every exposure in ["wet", "washed"] {
		subjects({"exposure": exposure, "entry": "top", "ip_immersion": false}) == {"box"}
	}
}

test_silent_from_below_or_where_made_for_water if {
	subjects({"entry": "below", "ip_immersion": false}) == set()
	subjects({"entry": "side", "ip_immersion": false}) == set()
	subjects({"entry": "top", "ip_immersion": true}) == set()
	subjects({"entry": "top", "ip_immersion": false, "exposure": "damp"}) == set()
}

test_asks_for_its_tightness_only_under_a_top_entry if {
	count(rule.asks) == 1 with input as part({"entry": "top"})
	count(rule.asks) == 0 with input as part({"entry": "below"})
}

test_applies_where_wet if {
	rule.applies == {"box"} with input as part({})
	rule.excludes == {"box"} with input as part({"exposure": "immersed"})
	rule.excludes == {"box"} with input as part({"electric": false})
}
