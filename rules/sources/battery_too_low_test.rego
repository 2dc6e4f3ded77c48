package driploop.rules.sources.battery_too_low_test

import data.driploop.rules.sources.battery_too_low as rule

doc(facts) := {"batteries": {"house": object.union({"path": "components.house", "cranking_given": false, "bypass": []}, facts)}}

faults(facts) := {f.figures.fault | some f in rule.breach with input as doc(object.union({"above_bilge_mm": 300, "in_splash": false}, facts))}

test_height if {
	faults({}) == set()
	faults({"above_bilge_mm": 1}) == set()
	faults({"above_bilge_mm": 0}) == {"its foot is not above normal bilge water"}
	faults({"above_bilge_mm": -20}) == {"its foot is not above normal bilge water"}
}

test_splash if {
	faults({"in_splash": true}) == {"bilge water splashes on it"}
}

test_silent_while_unknown if {
	rule.breach == set() with input as doc({})
}
