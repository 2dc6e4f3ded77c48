package driploop.rules.protection.interrupt_too_weak_test

import data.driploop.rules.protection.interrupt_too_weak as rule

# device stands first on a 12 V lead-acid bank of 1,000 A cranking current and
# 200 Ah; given facts replace its own, and those given as null are taken away.
device(facts) := {"devices": {"main": {name: value |
	some name, value in object.union(
		{
			"path": "components.main", "kind": "breaker", "purpose": "main", "lithium": false, "nominal_v": 12, "first": true,
			"cranking_a": 1000, "bank_ah": 200,
		},
		facts,
	)
	value != null
}}}

asked(facts) := {ask.fact | some ask in rule.asks with input as device(facts); ask.set == "us-voluntary"}

# table is the limit that the table sets, none if it is kept.
table(facts) := {found.limit.interrupt_a | some found in rule.breach with input as device(facts); found.set == "us-voluntary"}

physics(facts) := {found.limit.interrupt_a | some found in rule.breach with input as device(facts); found.set == "workmanship"}

# Table V-A of older editions of ABYC E-11 as a trade source republishes it: 650
# or less 1500/750, 651 to 1100 3000/1500, over 1100 5000/2500.
test_table_first_device if {
	table({"cranking_a": 650, "interrupt_a": 1499}) == {1500}
	table({"cranking_a": 650, "interrupt_a": 1500}) == set()
	table({"cranking_a": 651, "interrupt_a": 2999}) == {3000}
	table({"cranking_a": 1100, "interrupt_a": 3000}) == set()
	table({"cranking_a": 1101, "interrupt_a": 4999}) == {5000}
	table({"cranking_a": 1101, "interrupt_a": 5000}) == set()
}

test_table_branch if {
	table({"first": false, "cranking_a": 650, "interrupt_a": 749}) == {750}
	table({"first": false, "cranking_a": 650, "interrupt_a": 750}) == set()
	table({"first": false, "cranking_a": 1100, "interrupt_a": 1499}) == {1500}
	table({"first": false, "cranking_a": 1101, "interrupt_a": 2499}) == {2500}
	table({"first": false, "cranking_a": 1101, "interrupt_a": 2500}) == set()
}

# Reported of newer editions: the table ends at 2,200 A and at 500 Ah.
test_large_bank_is_not_judged_by_the_table if {
	table({"cranking_a": 2200, "bank_ah": 500, "interrupt_a": 4000}) == {5000}
	table({"cranking_a": 2201, "interrupt_a": 4000}) == set()
	table({"bank_ah": 501, "interrupt_a": 100}) == set()
	"bank_short_a" in asked({"bank_ah": 501, "interrupt_a": 6000})
	"bank_short_a" in asked({"cranking_a": 2201, "interrupt_a": 6000})
}

test_large_bank_by_its_short_circuit_current if {
	table({"bank_ah": 600, "bank_short_a": 9000, "interrupt_a": 8999}) == {9000}
	table({"bank_ah": 600, "bank_short_a": 9000, "interrupt_a": 9000}) == set()
	table({"bank_ah": 600, "bank_short_a": 10001, "interrupt_a": 19999}) == {20000}
	table({"bank_ah": 600, "bank_short_a": 10001, "interrupt_a": 20000}) == set()
}

test_lithium_is_never_met_by_the_table if {
	asked({"lithium": true, "cranking_a": null, "interrupt_a": 20000}) == {"bank_short_a"}
	table({"lithium": true, "cranking_a": null, "bank_short_a": 15000, "interrupt_a": 10000}) == {20000}
}

test_no_row_above_24_v if {
	table({"nominal_v": 32, "interrupt_a": 100}) == set()
	asked({"nominal_v": 32, "interrupt_a": 100}) == {"bank_short_a"}
}

test_cranking_amperes_are_asked_of_small_banks_only if {
	asked({"cranking_a": null}) == {"bank_ah", "cranking_a"}
	asked({"cranking_a": null, "bank_ah": 600}) == {"bank_ah", "bank_short_a"}
	asked({}) == {"bank_ah", "cranking_a", "first"}
}

test_below_the_least_fault_current if {
	physics({"fault_least_a": 1800, "fault_a": 4000, "interrupt_a": 1799}) == {1800}
	physics({"fault_least_a": 1800, "fault_a": 4000, "interrupt_a": 1800}) == set()
}

# Between the ends of an estimate it is the recorded resistance that decides.
test_within_the_range if {
	physics({"fault_least_a": 1800, "fault_a": 4000, "interrupt_a": 3999}) == set()
	physics({"fault_least_a": 1800, "fault_a": 4000, "interrupt_a": 3999, "bank_short_a": 4500}) == {4000}
	physics({"fault_least_a": 1800, "fault_a": 4000, "interrupt_a": 4000, "bank_short_a": 4500}) == set()
	{"subject": "main", "set": "workmanship", "fact": "bank_short_a"} in rule.asks with input as device({"interrupt_a": 20000})
}

# What stands in a grounded return is left aside, but only where that is known.
test_in_the_grounded_return if {
	rule.excludes == {"main"} with input as {"devices": {"main": {"ungrounded": false}}}
	rule.applies == {"main"} with input as {"devices": {"main": {"ungrounded": true}}}
	count(rule.excludes | rule.applies) == 0 with input as {"devices": {"main": {}}}
}
