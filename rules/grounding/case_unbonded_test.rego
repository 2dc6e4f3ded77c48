package driploop.rules.grounding.case_unbonded_test

import data.driploop.rules.grounding.case_unbonded as rule

part(facts) := {"components": {"winch": object.union({"path": "components.winch", "kind": "motor", "electric": true}, facts)}}

subjects(facts) := {f.subject | some f in rule.breach with input as part(facts)}

test_fires_on_an_unbonded_metal_case if {
	subjects({"metal_case": true, "case_bonded": false}) == {"winch"}
}

test_silent_otherwise if {
	subjects({"metal_case": true, "case_bonded": true}) == set()
	subjects({"metal_case": false, "case_bonded": false}) == set()
	subjects({"metal_case": true}) == set()
	subjects({"case_bonded": false}) == set()
}

test_applies_to_electrical_metal_cases if {
	rule.applies == {"winch"} with input as part({"metal_case": true})
	rule.excludes == {"winch"} with input as part({"metal_case": false})
	rule.excludes == {"winch"} with input as part({"metal_case": true, "electric": false})
	rule.excludes == set() with input as part({})
}
