package driploop.rules.penetrations.core_unsealed_test

import data.driploop.rules.penetrations.core_unsealed

hole(facts) := {"penetrations": {"plug": object.union({"path": "penetrations.plug", "build": "cored"}, facts)}}

places(input_facts) := {found.figures.where | some found in core_unsealed.breach with input as input_facts}

test_fires_on_a_raw_core if {
	places(hole({"core_edge": "raw", "fastener_count": 0})) == {"the hole"}
}

test_fires_on_fasteners_through_bare_core if {
	places(hole({"core_edge": "epoxy-annulus", "fastener_count": 3, "fastener_core_sealed": false})) == {"the fastener holes"}
}

test_silent_where_both_are_sealed if {
	places(hole({"core_edge": "core-plug", "fastener_count": 3, "fastener_core_sealed": true})) == set()
}

test_asks_for_fasteners_only_where_there_are_some if {
	core_unsealed.asks == set() with input as hole({"fastener_count": 0})
	core_unsealed.asks == {{"subject": "plug", "fact": "fastener_core_sealed"}} with input as hole({"fastener_count": 3})
}

test_applies_to_cored_panels_only if {
	core_unsealed.applies == {"plug"} with input as hole({})
	core_unsealed.applies == set() with input as hole({"build": "solid"})
}
