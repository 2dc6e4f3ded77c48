package driploop.rules.penetrations.no_drip_loop_test

import data.driploop.rules.penetrations.no_drip_loop

hole(facts) := {"penetrations": {"plug": object.union({"path": "penetrations.plug", "exposure": "washed", "passing": 1}, facts)}}

where(input_facts) := {found.figures.where | some found in no_drip_loop.breach with input as input_facts}

test_fires_where_the_cable_falls_to_the_hole if {
	where(hole({"loop_side": "none", "cable_falls": true, "equipment_below": false})) == {"to the hole"}
}

test_fires_where_equipment_stands_below if {
	where(hole({"loop_side": "none", "cable_falls": false, "equipment_below": true})) == {"on to equipment below the hole"}
}

test_silent_with_a_loop_or_where_nothing_runs_down if {
	where(hole({"loop_side": "from", "cable_falls": true, "equipment_below": true})) == set()
	where(hole({"loop_side": "none", "cable_falls": false, "equipment_below": false})) == set()
}

test_asks_only_where_there_is_no_loop if {
	count(no_drip_loop.asks) == 2 with input as hole({"loop_side": "none"})
	no_drip_loop.asks == set() with input as hole({"loop_side": "to"})
}

test_applies_only_to_cables_in_damp_places if {
	no_drip_loop.applies == {"plug"} with input as hole({"exposure": "damp"})
	no_drip_loop.applies == set() with input as hole({"exposure": "dry"})
	no_drip_loop.applies == set() with input as hole({"passing": 0})
}
