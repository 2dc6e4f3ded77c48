package driploop.rules.terminations.spliced_again_test

import data.driploop.rules.terminations.spliced_again as rule

doc(facts) := {"conductors": {"P1": object.union({"path": "conductors.P1"}, facts)}}

clauses(facts) := {found.clause | some found in rule.breach with input as doc(facts)}

test_one_splice_far_from_the_ends_is_silent if {
	clauses({"splices": 1, "splice_from_end_mm": 304.8}) == set()
	clauses({"splices": 0, "splice_from_end_mm": 0}) == set()
}

test_two_splices if {
	clauses({"splices": 2, "splice_from_end_mm": 1000}) == {"11-167c"}
}

# 12 in = 304.8 mm.
test_close_to_an_end if {
	clauses({"splices": 1, "splice_from_end_mm": 304.7}) == {"11-167"}
}

test_asks_where_a_splice_is if {
	count(rule.asks) == 1 with input as doc({"splices": 1})
	rule.asks == set() with input as doc({"splices": 0})
}
