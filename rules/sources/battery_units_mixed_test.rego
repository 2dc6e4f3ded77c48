package driploop.rules.sources.battery_units_mixed_test

import data.driploop.rules.sources.battery_units_mixed as rule

doc(facts) := {"batteries": {"house": object.union({"path": "components.house", "cranking_given": false, "bypass": []}, facts)}}

mixed(units, alike) if {
	count(rule.breach) == 1 with input as doc({"units": units, "units_match": alike})
}

test_two_unlike_batteries if {
	mixed(2, false)
	not mixed(2, true)
	not mixed(1, false)
}

test_one_battery_is_no_bank if {
	rule.excludes == {"house"} with input as doc({"units": 1})
	rule.applies == {"house"} with input as doc({"units": 2})
}
