package driploop.rules.penetrations.not_cured_test

import data.driploop.rules.penetrations.not_cured as rule

bed(facts) := {"penetrations": {"plug": object.union(
	{
		"path": "penetrations.plug", "touches": [], "maker_allows": [], "exposure": "washed", "compound": "polysulphide",
		"applied": "2026-05-28", "ready_on": "2026-06-04",
	},
	facts,
)}}

held(facts) := {f.figures.held | some f in rule.breach with input as bed(facts)}

test_fires_a_day_early if {
	held({"in_service": "2026-06-03"}) == {"2026-06-03"}
}

test_silent_on_the_day_and_after if {
	held({"in_service": "2026-06-04"}) == set()
	held({"in_service": "2026-07-01"}) == set()
}

test_silent_without_a_date if {
	held({}) == set()
}

test_applies_where_water_gets_and_compound_sets if {
	rule.applies == {"plug"} with input as bed({})
	rule.excludes == set() with input as bed({})
	every exposure in ["dry", "damp"] {
		rule.excludes == {"plug"} with input as bed({"exposure": exposure})
		rule.applies == set() with input as bed({"exposure": exposure})
	}
	every compound in ["butyl", "none"] {
		rule.excludes == {"plug"} with input as bed({"compound": compound})
		rule.applies == set() with input as bed({"compound": compound})
	}
}
