package driploop.rules.sources.charging_space_wrong_test

import data.driploop.rules.sources.charging_space_wrong as rule

doc(facts) := {"chargers": {"charger": object.union({"path": "components.charger", "kind": "charger", "battery_spaces": ["locker"], "spaces_known": true}, facts)}}

sets(facts) := {f.set | some f in rule.breach with input as doc(facts)}

test_above_2_kw_a_space_of_its_own if {
	sets({"power_w": 2000}) == set()
	sets({"power_w": 2001}) == {"us-inspected", "uk"}
	sets({"power_w": 2001, "battery_spaces": ["battery"]}) == set()
	sets({"power_w": 2001, "battery_spaces": ["open-deck"]}) == set()
}

test_never_where_people_live if {
	sets({"power_w": 100, "battery_spaces": ["accommodation"]}) == {"us-inspected"}
	sets({"power_w": 2001, "battery_spaces": ["accommodation"]}) == {"us-inspected", "uk"}
}

test_no_battery_no_finding if {
	sets({"power_w": 5000, "battery_spaces": []}) == set()
}

test_silent_without_the_power if {
	sets({"battery_spaces": ["accommodation"]}) == set()
}
