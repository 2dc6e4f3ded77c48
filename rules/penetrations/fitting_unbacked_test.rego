package driploop.rules.penetrations.fitting_unbacked_test

import data.driploop.rules.penetrations.fitting_unbacked as rule

hole(facts) := {"penetrations": {"switch-hole": object.union(
	{"path": "penetrations.switch-hole", "touches": [], "maker_allows": [], "load_bearing": true, "fastener_count": 3},
	facts,
)}}

subjects(facts) := {f.subject | some f in rule.breach with input as hole(facts)}

test_fires_without_backing if {
	subjects({"backing": "none"}) == {"switch-hole"}
}

test_silent_with_plate_or_plug if {
	subjects({"backing": "plate"}) == set()
	subjects({"backing": "core-plug"}) == set()
	subjects({}) == set()
}

test_applies_to_fastened_loaded_fittings if {
	rule.applies == {"switch-hole"} with input as hole({})
	rule.excludes == {"switch-hole"} with input as hole({"load_bearing": false})
	rule.excludes == {"switch-hole"} with input as hole({"fastener_count": 0})
	subjects({"backing": "none", "load_bearing": false}) == set()
	subjects({"backing": "none", "fastener_count": 0}) == set()
}
