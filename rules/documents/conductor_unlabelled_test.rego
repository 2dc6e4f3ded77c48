package driploop.rules.documents.conductor_unlabelled_test

import data.driploop.rules.documents.conductor_unlabelled as rule

wire(facts) := {"conductors": {"P1": object.union({"path": "conductors.P1", "role": "positive", "pigtail": false, "in_housing": false}, facts)}}

ends(facts) := {f.figures.ends | some f in rule.breach with input as wire(facts)}

test_fires_on_missing_labels if {
	ends({"labelled": "one"}) == {"one end only"}
	ends({"labelled": "none"}) == {"neither end"}
}

test_silent_with_both if {
	ends({"labelled": "both"}) == set()
	ends({}) == set()
}

test_leaves_out_leads_and_housings if {
	rule.applies == {"P1"} with input as wire({})
	rule.applies == set() with input as wire({"pigtail": true})
	rule.applies == set() with input as wire({"in_housing": true})
}
