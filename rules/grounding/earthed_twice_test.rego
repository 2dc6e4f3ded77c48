package driploop.rules.grounding.earthed_twice_test

import data.driploop.rules.grounding.earthed_twice

vessel(facts) := {"vessel": object.union({"path": "vessel", "earth_links_seen": 1}, facts)}

links(input_facts) := {found.figures.links | some found in earthed_twice.breach with input as input_facts}

test_fires_on_two_recorded if {
	links(vessel({"earth_links": 2})) == {2}
}

test_silent_on_one if {
	links(vessel({"earth_links": 1})) == set()
	links(vessel({"earth_links": 0, "earth_links_seen": 0})) == set()
}

test_fires_on_two_that_the_conductors_show if {
	links(vessel({"earth_links_seen": 2})) == {2}
	links(vessel({"earth_links": 1, "earth_links_seen": 2})) == {2}
}
