package driploop.rules.documents.signed_before_tested_test

import data.driploop.rules.documents.signed_before_tested

signed(last, on) := {"job": {"path": "job", "last_work": last, "last_work_at": "tests[0].on", "signed_on": on}}

test_fires_where_work_came_later if {
	count(signed_before_tested.breach) == 1 with input as signed("2026-06-19", "2026-06-18")
}

test_silent_on_the_same_day_and_after if {
	count(signed_before_tested.breach) == 0 with input as signed("2026-06-18", "2026-06-18")
	count(signed_before_tested.breach) == 0 with input as signed("2026-06-17", "2026-06-18")
}

test_silent_where_nothing_is_signed if {
	count(signed_before_tested.breach) == 0 with input as {"job": {"path": "job", "last_work": "2026-06-17"}}
}
