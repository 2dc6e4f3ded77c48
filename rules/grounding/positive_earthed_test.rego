package driploop.rules.grounding.positive_earthed_test

import data.driploop.rules.grounding.positive_earthed as rule

vessel(facts) := {"vessel": object.union({"path": "vessel"}, facts)}

test_fires_on_positive_ground if {
	count(rule.breach) == 1 with input as vessel({"earthing": "positive-ground"})
}

test_silent_otherwise if {
	every facts in [{"earthing": "negative-ground"}, {"earthing": "insulated"}, {}] {
		count(rule.breach) == 0 with input as vessel(facts)
	}
}
