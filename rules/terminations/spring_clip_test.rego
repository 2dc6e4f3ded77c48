package driploop.rules.terminations.spring_clip_test

import data.driploop.rules.terminations.spring_clip as rule

doc(facts) := {"ends": {"P1.from": object.union({"path": "conductors.P1.ends.from", "on": "house.pos", "on_kind": "battery"}, facts)}}

test_spring_clip if {
	count(rule.breach) == 1 with input as doc({"terminal": "spring-clip"})
	rule.breach == set() with input as doc({"terminal": "ring"})
	rule.breach == set() with input as doc({"terminal": "clamp"})
	rule.breach == set() with input as doc({})
}

test_only_on_batteries if {
	rule.applies == {"P1.from"} with input as doc({})
	rule.applies == set() with input as doc({"on_kind": "switch"})
}
