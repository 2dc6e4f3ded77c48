package driploop.rules.terminations.pull_too_low_test

import data.driploop.rules.terminations.pull_too_low as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

sample(gauge, pull) := {"terminal": "ring", "size": gauge, "gauge": gauge, "pull_n": pull, "pull_time_s": 60}

least(gauge) := {found.set: found.limit.pull_n | some found in rule.breach with input as doc(sample(gauge, 1))}

# Newtons of the tables: pounds-force times 4.44822, cut after the third decimal.
test_rows_of_both_tables if {
	least("18 AWG") == {"us-voluntary": 44.482, "workmanship": 88.964} # 18 AWG: 10 and 20 lbf
	least("16 AWG") == {"us-voluntary": 66.723, "workmanship": 133.446} # 16 AWG: 15 and 30 lbf
	least("14 AWG") == {"us-voluntary": 133.446, "workmanship": 222.411} # 14 AWG: 30 and 50 lbf
	least("10 AWG") == {"us-voluntary": 177.928, "workmanship": 355.857} # 10 AWG: 40 and 80 lbf
	least("1 AWG") == {"us-voluntary": 444.822, "workmanship": 889.644} # 1 AWG: 100 and 200 lbf
	least("4/0 AWG") == {"us-voluntary": 1000.849, "workmanship": 2001.699} # 4/0 AWG: 225 and 450 lbf
}

test_gauges_that_ul_does_not_list_hold_as_the_next_smaller if {
	least("3 AWG") == {"us-voluntary": 355.857, "workmanship": least("4 AWG").workmanship} # 80 lbf
	least("5 AWG") == {"us-voluntary": 266.893, "workmanship": least("6 AWG").workmanship} # 60 lbf
}

test_finer_than_the_tables if {
	least("20 AWG") == {"workmanship": 57.826} # 20 AWG: 13 lbf by UL 486A alone
	excluded := rule.excludes with input as doc({"terminal": "ring", "gauge": "20 AWG"})
	excluded == {{"subject": "P1.to", "set": "us-voluntary"}}
}

test_finer_than_both if {
	least("finer") == {}
	excluded := rule.excludes with input as doc({"terminal": "ring", "gauge": "finer"})
	count(excluded) == 2
}

test_at_the_limit_of_each if {
	found := rule.breach with input as doc(sample("16 AWG", 66.723))
	{f.set | some f in found} == {"workmanship"}
	rule.breach == set() with input as doc(sample("16 AWG", 133.446))
}

test_rows_from_memory_are_a_caution if {
	found := rule.breach with input as doc(sample("8 AWG", 1))
	{[f.set, f.severity] | some f in found} == {["us-voluntary", "caution"], ["workmanship", "warning"]}
}

test_a_short_pull_proves_nothing if {
	found := rule.breach with input as doc(object.union(sample("16 AWG", 500), {"pull_time_s": 59}))
	{f.severity | some f in found} == {"caution"}
	rule.breach == set() with input as doc(sample("16 AWG", 500))
}

test_only_crimped_terminals if {
	rule.excludes == {"P1.to"} with input as doc({"terminal": "plug"})
	rule.excludes == {"P1.to"} with input as doc({"terminal": "solder-lug"})
	count(rule.applies) == 2 with input as doc({"terminal": "butt", "gauge": "16 AWG"})
}

test_silent_while_something_is_missing if {
	rule.breach == set() with input as doc({"terminal": "ring", "gauge": "16 AWG"})
	rule.breach == set() with input as doc({"terminal": "ring", "pull_n": 1, "size": "a size"})
}
