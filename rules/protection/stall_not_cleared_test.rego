package driploop.rules.protection.stall_not_cleared_test

import data.driploop.rules.protection.stall_not_cleared as rule

load(facts) := {"loads": {"winch": object.union(
	{"path": "components.winch", "kind": "motor", "devices": ["fuse"], "switches": [], "shared_with": "", "rotor": true, "cranks": false, "stall_at": "P2"},
	facts,
)}}

limits(facts) := {object.get(found.limit, "time_s", "never") | some found in rule.breach with input as load(facts)}

asked(facts) := {one.fact | some one in rule.asks with input as load(facts)}

test_nothing_cuts_it_off if {
	limits({"stall_cut": false, "stall_heats": false}) == {"never"}
}

test_conductor_at_its_limit if {
	limits({"stall_cut": true, "stall_heats": true, "stall_cut_s": 30, "stall_heat_s": 30}) == set()
	limits({"stall_cut": true, "stall_heats": true, "stall_cut_s": 31, "stall_heat_s": 30}) == {30}
	limits({"stall_cut": true, "stall_heats": false, "stall_cut_s": 3600}) == set()
}

test_motor_without_a_protector_at_its_limit if {
	limits({"stall_cut": true, "stall_heats": false, "protector": "none", "stall_cut_s": 20, "motor_limit_s": 20}) == set()
	limits({"stall_cut": true, "stall_heats": false, "protector": "none", "stall_cut_s": 21, "motor_limit_s": 20}) == {20}
	limits({"stall_cut": true, "stall_heats": false, "protector": "thermal-auto", "stall_cut_s": 21, "motor_limit_s": 20}) == set()
}

test_only_what_decides_is_asked if {
	asked({"stall_cut": false}) == set()
	asked({"stall_cut": true, "stall_heats": false, "protector": "thermal-auto"}) == {"protector"}
	asked({"stall_cut": true, "stall_heats": false, "protector": "none"}) == {"protector", "stall_cut_s", "motor_limit_s"}
	asked({"stall_cut": true, "stall_heats": true, "protector": "thermal-auto"}) == {"protector", "stall_cut_s", "stall_heat_s"}
}

# A starter has no fuse ahead and no protector: its feed is let go by every document.
test_cranking_motors_are_left_out if {
	rule.applies == {"winch"} with input as load({})
	rule.applies == set() with input as load({"cranks": true})
}

test_loads_without_a_rotor_are_left_out if {
	rule.applies == set() with input as load({"rotor": false})
}
