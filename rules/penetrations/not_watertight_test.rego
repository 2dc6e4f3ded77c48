package driploop.rules.penetrations.not_watertight_test

import data.driploop.rules.penetrations.not_watertight

hole(facts) := {"penetrations": {"plug": object.union({"path": "penetrations.plug", "watertight": false, "seal_kind": "gland", "ip": "IP"}, facts)}}

limits_broken(input_facts) := {found.limit.rating | some found in not_watertight.breach with input as input_facts}

test_wet_asks_for_splash if {
	limits_broken(hole({"exposure": "wet", "ip_splash": false})) == {"IPX4"}
	limits_broken(hole({"exposure": "wet", "ip_splash": true})) == set()
}

test_washed_asks_for_jets if {
	limits_broken(hole({"exposure": "washed", "ip_jets": false, "ip_immersion": false})) == {"IPX6"}
	limits_broken(hole({"exposure": "washed", "ip_jets": true, "ip_immersion": false})) == set()
}

test_immersion_alone_where_washed_is_a_caution if {
	some found in not_watertight.breach with input as hole({"exposure": "washed", "ip_jets": false, "ip_immersion": true})
	found.severity == "caution"
}

test_immersed_asks_for_immersion if {
	limits_broken(hole({"exposure": "immersed", "ip_immersion": false})) == {"IPX7"}
	limits_broken(hole({"exposure": "immersed", "ip_immersion": true})) == set()
}

test_a_watertight_bulkhead_stays_so if {
	limits_broken(hole({"exposure": "dry", "watertight": true, "ip_immersion": false})) == {"IPX7"}
	limits_broken(hole({"exposure": "dry", "watertight": true, "seal_kind": "none"})) == {"IPX7"}
}

test_an_open_hole_needs_no_rating_to_fail if {
	limits_broken(hole({"exposure": "wet", "seal_kind": "none"})) == {"IPX4"}
}

test_asks_for_the_rating_that_the_place_needs if {
	not_watertight.asks == {{"subject": "plug", "fact": "ip_splash"}} with input as hole({"exposure": "wet"})
	not_watertight.asks == {{"subject": "plug", "fact": "ip_jets"}} with input as hole({"exposure": "washed"})
	not_watertight.asks == set() with input as hole({"exposure": "dry"})
}

test_does_not_apply_where_it_is_dry if {
	not_watertight.applies == set() with input as hole({"exposure": "dry"})
	not_watertight.applies == set() with input as hole({"exposure": "damp"})
	not_watertight.applies == {"plug"} with input as hole({"exposure": "washed"})
}

test_the_limits_shown_are_those_judged_by if {
	every set in ["workmanship", "us-inspected"] {
		not_watertight.limits[set]["in a wet place"].rating == not_watertight.needed.wet.rating
		not_watertight.limits[set]["in a washed place"].rating == not_watertight.needed.washed.rating
		not_watertight.limits[set]["immersed, or in a watertight bulkhead"].rating == not_watertight.needed.immersed.rating
	}
}
