package driploop.rules.documents.changed_after_sign_off_test

import data.driploop.rules.documents.changed_after_sign_off as rule

job(facts) := {"job": object.union({"path": "job", "digest_given": true, "digest": "sha256:aa"}, facts)}

test_fires_on_another_digest if {
	count(rule.breach) == 1 with input as job({"signed_digest": "sha256:bb"})
}

test_silent_on_the_same if {
	count(rule.breach) == 0 with input as job({"signed_digest": "sha256:aa"})
	count(rule.breach) == 0 with input as job({})
}

test_applies_where_a_digest_was_signed if {
	rule.applies == {"job"} with input as job({})
	rule.applies == set() with input as job({"digest_given": false})
}
