package driploop.rules.equipment.ingress_rating_low_test

import data.driploop.rules.equipment.ingress_rating_low

lamp(facts) := {"components": {"light": object.union({"path": "components.light", "kind": "lamp", "electric": true, "ip": "IP"}, facts)}}

limits_broken(input_facts) := {found.limit.rating | some found in ingress_rating_low.breach with input as input_facts}

test_each_exposure_asks_for_its_test if {
	limits_broken(lamp({"exposure": "wet", "ip_splash": false})) == {"IPX4"}
	limits_broken(lamp({"exposure": "washed", "ip_jets": false, "ip_immersion": false})) == {"IPX6"}
	limits_broken(lamp({"exposure": "immersed", "ip_immersion": false})) == {"IPX7"}
}

test_silent_where_the_test_was_passed if {
	limits_broken(lamp({"exposure": "wet", "ip_splash": true})) == set()
	limits_broken(lamp({"exposure": "washed", "ip_jets": true, "ip_immersion": false})) == set()
	limits_broken(lamp({"exposure": "immersed", "ip_immersion": true})) == set()
}

test_immersion_alone_where_washed_is_a_caution if {
	some found in ingress_rating_low.breach with input as lamp({"exposure": "washed", "ip_jets": false, "ip_immersion": true})
	found.severity == "caution"
}

test_asks_for_the_digit_that_the_place_needs if {
	ingress_rating_low.asks == {{"subject": "light", "fact": "ip_jets"}} with input as lamp({"exposure": "washed"})
	ingress_rating_low.asks == set() with input as lamp({"exposure": "dry"})
}

test_applies_only_to_electrical_parts_in_wet_places if {
	ingress_rating_low.applies == {"light"} with input as lamp({"exposure": "wet"})
	ingress_rating_low.applies == set() with input as lamp({"exposure": "damp"})
	ingress_rating_low.excludes == {"light"} with input as lamp({"electric": false})
}

test_the_limits_shown_are_those_judged_by if {
	every set in ["workmanship", "us-inspected"] {
		ingress_rating_low.limits[set]["in a wet place"].rating == ingress_rating_low.needed.wet.rating
		ingress_rating_low.limits[set]["in a washed place"].rating == ingress_rating_low.needed.washed.rating
		ingress_rating_low.limits[set].immersed.rating == ingress_rating_low.needed.immersed.rating
	}
}
