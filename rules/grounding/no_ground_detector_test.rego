package driploop.rules.grounding.no_ground_detector_test

import data.driploop.rules.grounding.no_ground_detector as rule

vessel(facts) := {"vessel": object.union({"path": "vessel"}, facts)}

test_fires_on_an_insulated_system_without if {
	count(rule.breach) == 1 with input as vessel({"earthing": "insulated", "detector": false})
}

test_silent_otherwise if {
	every facts in [{"earthing": "insulated", "detector": true}, {"earthing": "insulated"}, {"earthing": "negative-ground", "detector": false}, {"detector": false}] {
		count(rule.breach) == 0 with input as vessel(facts)
	}
}

test_applies_to_insulated_systems if {
	rule.applies == {"vessel"} with input as vessel({"earthing": "insulated"})
	rule.excludes == {"vessel"} with input as vessel({"earthing": "negative-ground"})
	rule.excludes == set() with input as vessel({})
}
