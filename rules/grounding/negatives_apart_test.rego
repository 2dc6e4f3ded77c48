package driploop.rules.grounding.negatives_apart_test

import data.driploop.rules.grounding.negatives_apart

vessel(groups, stray) := {"vessel": {"path": "vessel", "negative_groups": groups, "stray_negatives": stray}}

test_fires_on_two_groups if {
	count(negatives_apart.breach) == 1 with input as vessel(2, ["fan.neg"])
}

test_silent_on_one_group if {
	count(negatives_apart.breach) == 0 with input as vessel(1, [])
}

test_silent_where_nothing_is_wired if {
	count(negatives_apart.breach) == 0 with input as {"vessel": {"path": "vessel", "stray_negatives": []}}
}
