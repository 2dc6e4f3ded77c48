package driploop.rules.documents.device_unlabelled_test

import data.driploop.rules.documents.device_unlabelled as rule

part(facts) := {"components": {"b1": object.union({"path": "components.b1", "kind": "breaker", "electric": true}, facts)}}

kinds(facts) := {f.figures.kind | some f in rule.breach with input as part(facts)}

test_fires_without_a_label if {
	every kind in ["breaker", "fuse", "switch"] {
		kinds({"kind": kind, "label": "none"}) == {kind}
	}
}

test_silent_with_a_name if {
	kinds({"label": "Bilge pump"}) == set()
	kinds({}) == set()
	kinds({"kind": "lamp", "label": "none"}) == set()
}

test_applies_to_what_is_worked_or_replaced if {
	rule.applies == {"b1"} with input as part({})
	rule.applies == set() with input as part({"kind": "busbar"})
}
