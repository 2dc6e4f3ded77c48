package driploop.rules.sources.battery_unvented_test

import data.driploop.rules.sources.battery_unvented as rule

doc(facts) := {"batteries": {"house": object.union({"path": "components.house", "cranking_given": false, "bypass": []}, facts)}}

closed := {"chemistry": "agm", "open_to_air": false, "vented_to": "outside", "vent_cm2": 15, "vent_needed_cm2": 15}

found(facts) := {f.figures.fault | some f in rule.breach with input as doc(object.union(closed, facts))}

test_vented_and_wide_enough_is_silent if {
	found({}) == set()
}

test_no_way_out if {
	found({"vented_to": "none"}) == {"its gas has no way out"}
}

test_into_a_closed_space if {
	found({"vented_to": "space"}) == {"its gas stays in a space that is not open to the air"}
	found({"vented_to": "space", "open_to_air": true}) == set()
}

test_opening_just_too_small if {
	found({"vent_cm2": 14.9}) == {"its vent is too small for the gas of charging"}
}

sets(facts) := {a.set | some a in rule.applies with input as doc(object.union(closed, facts))}

test_lithium_is_excluded if {
	rule.excludes == {"house"} with input as doc({"chemistry": "lithium"})
	sets({"chemistry": "lithium"}) == set()
}

test_the_size_of_the_opening_only_in_closed_spaces if {
	"workmanship" in sets({})
	not "workmanship" in sets({"open_to_air": true})
	"us-federal" in sets({"open_to_air": true})
}
