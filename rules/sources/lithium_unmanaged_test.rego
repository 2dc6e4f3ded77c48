package driploop.rules.sources.lithium_unmanaged_test

import data.driploop.rules.sources.lithium_unmanaged as rule

doc(facts) := {"batteries": {"house": object.union({"path": "components.house", "cranking_given": false, "bypass": []}, facts)}}

test_unmanaged_lithium if {
	rule.breach == {{"subject": "house"}} with input as doc({"chemistry": "lithium", "managed": false})
	rule.breach == set() with input as doc({"chemistry": "lithium", "managed": true})
	rule.breach == set() with input as doc({"chemistry": "lithium"})
}

test_lead_is_excluded if {
	rule.excludes == {"house"} with input as doc({"chemistry": "agm"})
	rule.breach == set() with input as doc({"chemistry": "agm", "managed": false})
}
