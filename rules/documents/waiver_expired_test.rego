package driploop.rules.documents.waiver_expired_test

import data.driploop.rules.documents.waiver_expired as rule

on(today, facts) := {
	"job": {"path": "job", "today": today},
	"waivers": {"0000": object.union({"path": "waivers[0]", "lacks": [], "dated": true, "until": "2026-07-01"}, facts)},
}

subjects(document) := {f.subject | some f in rule.breach with input as document}

test_holds_on_its_last_day_and_not_after if {
	subjects(on("2026-07-01", {})) == set()
	subjects(on("2026-07-02", {})) == {"0000"}
	subjects(on("2025-12-31", {})) == set()
}

test_silent_without_a_date_or_a_day if {
	subjects({"job": {"path": "job"}, "waivers": {"0000": {"path": "waivers[0]", "until": "2026-07-01"}}}) == set()
	subjects({"job": {"path": "job", "today": "2026-07-02"}, "waivers": {"0000": {"path": "waivers[0]"}}}) == set()
}
