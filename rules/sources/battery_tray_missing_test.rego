package driploop.rules.sources.battery_tray_missing_test

import data.driploop.rules.sources.battery_tray_missing as rule

doc(facts) := {"batteries": {"house": object.union({"path": "components.house", "cranking_given": false, "bypass": []}, facts)}}

trays(tray) := {f.figures.tray | some f in rule.breach with input as doc({"chemistry": "flooded", "tray": tray})}

test_none_and_plain if {
	trays("none") == {"no tray"}
	trays("plain") == {"a tray that the acid attacks"}
	trays("resistant") == set()
	trays("liquid-tight") == set()
}

test_only_flooded_batteries if {
	rule.applies == {"house"} with input as doc({"chemistry": "flooded"})
	rule.excludes == {"house"} with input as doc({"chemistry": "gel"})
	rule.excludes == set() with input as doc({})
}
