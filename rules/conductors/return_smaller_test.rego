package driploop.rules.conductors.return_smaller_test

import data.driploop.rules.conductors.return_smaller as rule

# wire is a return of 14 AWG, 35 A by Table 5 at 105 °C.
wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "", "bare_from": "", "bare_via": "",
	},
	object.union({"known_role": "negative", "ungrounded": false, "returns": true, "size": "14 AWG", "table5_a": 35}, facts),
)}}

limits(facts) := {found.limit.returns_a |
	some found in rule.breach with input as wire(facts)
	found.subject in rule.applies with input as wire(facts)
}

# 150 % of 35 A is 52.5 A.
test_at_150_per_cent if {
	limits({"returns_a": 52.5, "returns_table5_pct": 150, "feeds_table5_pct": 40}) == set()
	limits({"returns_a": 60, "returns_table5_pct": 171.4, "feeds_table5_pct": 40}) == {52.5}
}

test_feed_that_stands_no_better if {
	limits({"returns_a": 60, "returns_table5_pct": 171.4, "feeds_table5_pct": 171.4}) == set()
	limits({"returns_a": 60, "returns_table5_pct": 171.4}) == set()
	count(rule.asks) == 1 with input as wire({"returns_table5_pct": 171.4})
	count(rule.asks) == 0 with input as wire({"returns_table5_pct": 150})
}

test_what_it_leaves_out if {
	every facts in [{"known_role": "positive"}, {"duty": "cranking"}, {"ungrounded": true}, {"returns": false}] {
		rule.applies == set() with input as wire(facts)
		rule.excludes == {"P1"} with input as wire(facts)
	}
}

test_silent_without_the_ratings if {
	limits({}) == set()
}
