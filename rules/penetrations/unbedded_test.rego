package driploop.rules.penetrations.unbedded_test

import data.driploop.rules.penetrations.unbedded

hole(facts) := {"penetrations": {"plug": object.union({"path": "penetrations.plug", "exposure": "washed"}, facts)}}

what(input_facts) := {found.figures.what | some found in unbedded.breach with input as input_facts}

test_fires_without_compound if {
	what(hole({"compound": "none", "fastener_count": 0})) == {"the fitting stands"}
}

test_fires_on_bare_fasteners if {
	what(hole({"compound": "butyl", "fastener_count": 3, "fasteners_bedded": false})) == {"fasteners go through"}
}

test_silent_where_all_is_bedded if {
	what(hole({"compound": "polysulphide", "fastener_count": 3, "fasteners_bedded": true})) == set()
	what(hole({"compound": "polysulphide", "fastener_count": 0})) == set()
}

test_asks_for_fasteners_only_where_there_are_some if {
	unbedded.asks == set() with input as hole({"fastener_count": 0})
	unbedded.asks == {{"subject": "plug", "fact": "fasteners_bedded"}} with input as hole({"fastener_count": 2})
}

test_applies_only_where_it_is_wet if {
	unbedded.applies == {"plug"} with input as hole({})
	unbedded.applies == set() with input as hole({"exposure": "damp"})
}
