package driploop.rules.penetrations.edge_not_chamfered_test

import data.driploop.rules.penetrations.edge_not_chamfered as rule

hole(facts) := {"penetrations": {"plug": object.union(
	{"path": "penetrations.plug", "touches": [], "maker_allows": [], "gelcoat": true, "edge": "chamfered", "fastener_count": 0},
	facts,
)}}

whats(facts) := {f.figures.what | some f in rule.breach with input as hole(facts)}

test_fires_on_a_raw_edge if {
	whats({"edge": "raw"}) == {"the edge of the hole is"}
}

test_silent_on_worked_and_lined_edges if {
	every edge in ["chamfered", "rounded", "grommet", "bush", "edge-strip"] {
		whats({"edge": edge}) == set()
	}
}

test_fires_on_sharp_fastener_holes if {
	whats({"fastener_count": 3, "countersunk": false}) == {"the holes of the fasteners are"}
	whats({"fastener_count": 3, "countersunk": true}) == set()
	whats({"fastener_count": 0, "countersunk": false}) == set()
}

test_asks_for_countersinks_only_with_fasteners if {
	count(rule.asks) == 1 with input as hole({"fastener_count": 1})
	count(rule.asks) == 0 with input as hole({"fastener_count": 0})
}

test_applies_to_gelcoat if {
	rule.applies == {"plug"} with input as hole({})
	rule.excludes == {"plug"} with input as hole({"gelcoat": false})
}
