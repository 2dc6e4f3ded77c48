package driploop.rules.penetrations.edge_unprotected_test

import data.driploop.rules.penetrations.edge_unprotected

hole(facts) := {"penetrations": {"plug": object.union({"path": "penetrations.plug", "passing": 1}, facts)}}

subjects(input_facts) := {found.subject | some found in edge_unprotected.breach with input as input_facts}

test_fires_on_a_bare_edge_without_a_seal if {
	subjects(hole({"seal_kind": "none", "edge": "raw"})) == {"plug"}
	subjects(hole({"seal_kind": "none", "edge": "chamfered"})) == {"plug"}
}

test_fires_on_compound_against_a_raw_edge if {
	subjects(hole({"seal_kind": "compound", "edge": "raw"})) == {"plug"}
}

test_silent_where_the_edge_or_the_seal_guards if {
	subjects(hole({"seal_kind": "none", "edge": "grommet"})) == set()
	subjects(hole({"seal_kind": "gland", "edge": "raw"})) == set()
	subjects(hole({"seal_kind": "compound", "edge": "chamfered"})) == set()
}

test_asks_for_the_edge_only_where_the_seal_does_not_guard if {
	edge_unprotected.asks == {{"subject": "plug", "fact": "edge"}} with input as hole({"seal_kind": "none"})
	edge_unprotected.asks == set() with input as hole({"seal_kind": "gland"})
}

test_applies_only_where_a_conductor_passes if {
	edge_unprotected.applies == {"plug"} with input as hole({})
	edge_unprotected.applies == set() with input as hole({"passing": 0})
}
