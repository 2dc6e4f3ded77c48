package driploop.yard.PACKAGE_test

import data.driploop.yard.PACKAGE

long(length_mm) := {"conductors": {"P1": {"path": "conductors.P1", "length_mm": length_mm}}}

test_finds_over_the_limit if {
	count(NAME.breach) == 1 with input as long(20001)
}

test_silent_at_the_limit if {
	count(NAME.breach) == 0 with input as long(20000)
}
