package driploop.rules.terminations.pull_too_low_test

import data.driploop.rules.terminations.pull_too_low as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

sample(area, pull) := {"terminal": "ring", "size": "a size", "area_mm2": area, "pull_n": pull, "pull_time_s": 60}

least(area) := {found.set: found.limit.pull_n | some found in rule.breach with input as doc(sample(area, 1))}

# Newtons of the tables: pounds-force times 4.44822, cut after the third decimal.
test_rows_of_both_tables if {
	least(0.823) == {"us-voluntary": 44.482, "workmanship": 88.964} # 18 AWG: 10 and 20 lbf
	least(1.309) == {"us-voluntary": 66.723, "workmanship": 133.446} # 16 AWG: 15 and 30 lbf
	least(2.081) == {"us-voluntary": 133.446, "workmanship": 222.411} # 14 AWG: 30 and 50 lbf
	least(5.261) == {"us-voluntary": 177.928, "workmanship": 355.857} # 10 AWG: 40 and 80 lbf
	least(42.41) == {"us-voluntary": 444.822, "workmanship": 889.644} # 1 AWG: 100 and 200 lbf
	least(107.2) == {"us-voluntary": 1000.849, "workmanship": 2001.699} # 4/0 AWG: 225 and 450 lbf
}

test_metric_sizes_hold_as_the_next_smaller_gauge if {
	least(2.5) == least(2.081)
	least(35) == least(33.63)
	least(150) == least(107.2)
}

test_finer_than_the_tables if {
	least(0.5176) == {"workmanship": 57.826} # 20 AWG: 13 lbf by UL 486A alone
	excluded := rule.excludes with input as doc({"terminal": "ring", "area_mm2": 0.5176})
	excluded == {{"subject": "P1.to", "set": "us-voluntary"}}
}

test_at_the_limit_of_each if {
	found := rule.breach with input as doc(sample(1.309, 66.723))
	{f.set | some f in found} == {"workmanship"}
	rule.breach == set() with input as doc(sample(1.309, 133.446))
}

test_rows_from_memory_are_a_caution if {
	found := rule.breach with input as doc(sample(8.366, 1))
	{[f.set, f.severity] | some f in found} == {["us-voluntary", "caution"], ["workmanship", "warning"]}
}

test_a_short_pull_proves_nothing if {
	found := rule.breach with input as doc(object.union(sample(1.309, 500), {"pull_time_s": 59}))
	{f.severity | some f in found} == {"caution"}
	rule.breach == set() with input as doc(sample(1.309, 500))
}

test_only_crimped_terminals if {
	rule.excludes == {"P1.to"} with input as doc({"terminal": "plug"})
	rule.excludes == {"P1.to"} with input as doc({"terminal": "solder-lug"})
	count(rule.applies) == 2 with input as doc({"terminal": "butt", "area_mm2": 1.309})
}

test_silent_while_something_is_missing if {
	rule.breach == set() with input as doc({"terminal": "ring", "area_mm2": 1.309})
	rule.breach == set() with input as doc({"terminal": "ring", "pull_n": 1, "size": "a size"})
}
