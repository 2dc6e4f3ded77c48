package driploop.rules.terminations.washer_in_path_test

import data.driploop.rules.terminations.washer_in_path as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

breached(facts) := {found.subject | some found in rule.breach with input as doc(facts)}

test_washer if {
	breached({"terminal": "ring", "washer_in_path": true}) == {"P1.to"}
	breached({"terminal": "ring", "washer_in_path": false}) == set()
	breached({"terminal": "ring"}) == set()
}

test_only_screws_and_nuts if {
	rule.excludes == {"P1.to"} with input as doc({"terminal": "blade"})
	rule.applies == {"P1.to"} with input as doc({"terminal": "solder-lug"})
}
