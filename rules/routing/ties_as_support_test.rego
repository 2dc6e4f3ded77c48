package driploop.rules.routing.ties_as_support_test

import data.driploop.rules.routing.ties_as_support as rule

doc(facts, length) := {
	"vessel": {"path": "vessel", "system_v": 12, "length_mm": length},
	"segments": {"P1[0]": object.union({"path": "conductors.P1.route[0]", "in": "open", "conductor_mm": 3000}, facts)},
}

sets(facts) := {found.set | some found in rule.breach with input as doc(facts, 9400)}

test_ties_and_tape_are_no_support if {
	sets({"support_kind": "tie"}) == {"workmanship", "us-inspected"}
	sets({"support_kind": "tape"}) == {"workmanship", "us-inspected"}
}

test_clamps_and_saddles_are if {
	every kind in ["clamp", "cushioned-clamp", "metal-clamp", "saddle", "none"] {
		sets({"support_kind": kind}) == set()
	}
}

test_a_short_conductor_needs_no_support if {
	sets({"support_kind": "tie", "conductor_mm": 609.6}) == set()
	sets({"support_kind": "tie", "conductor_mm": 609.7}) == {"workmanship"}
}

# 65 ft, printed as 19.8 m.
test_small_vessels_are_excepted_from_46_cfr if {
	{"subject": "P1[0]", "set": "us-inspected"} in rule.excludes with input as doc({}, 19800)
	rule.excludes == set() with input as doc({}, 19801)
	{a.set | some a in rule.applies} == {"workmanship", "us-inspected"} with input as doc({}, 24000)
}

test_asks_what_holds_a_long_one if {
	count(rule.asks) == 2 with input as doc({}, 9400)
	rule.asks == set() with input as doc({"conductor_mm": 300}, 9400)
}
