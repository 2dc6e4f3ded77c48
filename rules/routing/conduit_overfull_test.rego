package driploop.rules.routing.conduit_overfull_test

import data.driploop.rules.routing.conduit_overfull as rule

doc(facts) := {"segments": {"P1[0]": object.union({"path": "conductors.P1.route[0]", "in": "conduit", "conduit_lead": true}, facts)}}

over(cables, pct) if {
	count(rule.breach) == 1 with input as doc({"conduit_holds": cables, "fill_least_pct": pct, "fill_most_pct": pct})
}

# NFPA 70 chapter 9 table 1.
test_each_row_at_and_over if {
	not over(1, 53)
	over(1, 53.1)
	not over(2, 31)
	over(2, 31.1)
	not over(3, 40)
	over(3, 40.1)
	over(9, 40.1)
}

test_asks_for_diameters_that_might_be_too_much if {
	count(rule.asks) == 1 with input as doc({"conduit_holds": 3, "fill_least_pct": 35, "fill_most_pct": 45})
	rule.asks == set() with input as doc({"conduit_holds": 3, "fill_least_pct": 30, "fill_most_pct": 39})
}

test_judged_once_a_conduit if {
	rule.applies == {"P1[0]"} with input as doc({})
	rule.excludes == {"P1[0]"} with input as doc({"conduit_lead": false})
	rule.excludes == {"P1[0]"} with input as doc({"in": "open"})
}
