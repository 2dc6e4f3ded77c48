package driploop.rules.documents.waiver_without_reason_test

import data.driploop.rules.documents.waiver_without_reason as rule

parts(lacks) := {f.figures.parts | some f in rule.breach with input as {"waivers": {"0000": {"path": "waivers[0]", "dated": true, "lacks": lacks}}}}

test_fires_on_what_is_lacking if {
	parts(["reason"]) == {"reason"}
	parts(["reason", "author", "date"]) == {"reason, author, date"}
}

test_silent_on_a_whole_one if {
	parts([]) == set()
}
