package driploop.rules.terminations.torque_off_test

import data.driploop.rules.terminations.torque_off as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

made := {"torque_range_given": true, "torque_least_nm": 8, "torque_most_nm": 10}

breached(facts) := {found.limit.torque_nm | some found in rule.breach with input as doc(facts)}

test_makers_range_at_and_beyond_both_ends if {
	breached(object.union(made, {"torque_nm": 8})) == set()
	breached(object.union(made, {"torque_nm": 10})) == set()
	breached(object.union(made, {"torque_nm": 7.9})) == {8}
	breached(object.union(made, {"torque_nm": 10.1})) == {10}
}

test_the_makers_range_stands_over_the_tables if {
	breached(object.union(made, {"torque_nm": 8.5, "stud": "M10"})) == set()
}

test_tables_where_the_maker_is_silent if {
	breached({"torque_range_given": false, "torque_nm": 8.9, "stud": "M8"}) == {9}
	breached({"torque_range_given": false, "torque_nm": 9, "stud": "M8"}) == set()
	breached({"torque_range_given": false, "torque_nm": 18.8, "stud": "M8"}) == {18.7}
	breached({"torque_range_given": false, "torque_nm": 100, "stud": "M12"}) == set()
}

test_only_screws_and_nuts if {
	rule.applies == {"P1.to"} with input as doc({"terminal": "ring"})
	rule.excludes == {"P1.to"} with input as doc({"terminal": "blade"})
}
