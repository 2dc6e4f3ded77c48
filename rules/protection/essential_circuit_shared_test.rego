package driploop.rules.protection.essential_circuit_shared_test

import data.driploop.rules.protection.essential_circuit_shared as rule

load(facts) := {"loads": {"one": object.union(
	{"path": "components.one", "kind": "lamp", "devices": ["fuse"], "switches": [], "own_device": "fuse", "shared_with": ""},
	facts,
)}}

sets(facts) := {applied.set |
	some applied in rule.applies with input as load(facts)
	some found in rule.breach with input as load(facts)
	found.set == applied.set
}

# 46 CFR 28.365(f).
test_navigation_light_with_others if {
	sets({"purpose": "navigation-light", "shared_with": "galley", "mixed": true}) == {"us-inspected", "workmanship"}
	sets({"purpose": "navigation-light", "shared_with": "stern", "mixed": false}) == set()
	sets({"purpose": "navigation-light", "mixed": false}) == set()
}

# 46 CFR 28.365(g), 183.392: each radio on a circuit of its own.
test_two_radios_on_one_device if {
	sets({"purpose": "radio", "shared_with": "other-radio", "mixed": false}) == {"us-inspected"}
}

test_bilge_pump_is_common_practice_alone if {
	sets({"purpose": "bilge-pump", "shared_with": "galley", "mixed": true}) == {"workmanship"}
}

test_common_practice_is_a_caution if {
	severities := {found.severity |
		some found in rule.breach with input as load({"purpose": "alarm", "shared_with": "galley", "mixed": true})
		found.set == "workmanship"
	}
	severities == {"caution"}
}

test_other_loads_are_left_out if {
	"one" in rule.excludes with input as load({"purpose": "cabin-light"})
	rule.applies == set() with input as load({"purpose": "cabin-light"})
	rule.applies == set() with input as load({})
}

test_mixture_is_asked_where_something_is_shared if {
	rule.asks == {{"subject": "one", "fact": "mixed"}} with input as load({"shared_with": "galley"})
	rule.asks == set() with input as load({})
}
