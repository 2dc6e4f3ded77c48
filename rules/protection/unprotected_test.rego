package driploop.rules.protection.unprotected_test

import data.driploop.rules.protection.unprotected as rule

# wire is a conductor that a battery can feed; given facts replace its own.
wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "house.pos", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": true, "fed": true, "ungrounded": true, "bare_from": "house.pos", "bare_via": "pump",
	},
	facts,
)}}

# sets names the practice sets that find a breach and apply.
sets(facts) := {found.set |
	doc := wire(facts)
	some found in rule.breach with input as doc
	{"subject": "P1", "set": found.set} in rule.applies with input as doc
}

everyone := {"us-federal", "us-inspected", "uk", "eu", "us-voluntary", "international"}

test_bare_is_found_by_all if {
	sets({"bare": true}) == everyone
}

test_silent_behind_a_device if {
	sets({"bare": false}) == set()
}

test_silent_where_no_source_is_known if {
	sets({"fed": false}) == set()
}

test_cranking_feed_is_exempt_everywhere if {
	sets({"bare": true, "duty": "cranking"}) == set()
}

# 33 CFR 183.455(e) only.
test_resistance_and_ignition_are_exempt_by_33_cfr_alone if {
	sets({"bare": true, "duty": "resistance"}) == everyone - {"us-federal"}
	sets({"bare": true, "duty": "ignition-secondary"}) == everyone - {"us-federal"}
}

# 33 CFR 183.425(g), not 183.455(e), frees these: they need a device.
test_communication_and_housed_conductors_are_not_exempt if {
	sets({"bare": true, "duty": "communication"}) == everyone
	sets({"bare": true, "duty": "electronic"}) == everyone
	sets({"bare": true, "in_housing": true}) == everyone
}

# 7 in is 177.8 mm; "less than seven inches" is exempt, by 33 CFR alone.
test_pigtail_at_7_in if {
	"us-federal" in sets({"bare": true, "pigtail": true, "exposed_mm": 177.8})
	not "us-federal" in sets({"bare": true, "pigtail": true, "exposed_mm": 177.7})
	sets({"bare": true, "pigtail": true, "exposed_mm": 100}) == everyone - {"us-federal"}
}

test_pigtail_of_unknown_length_is_asked_for if {
	asked := rule.asks with input as wire({"bare": true, "pigtail": true})
	{"subject": "P1", "set": "us-federal", "fact": "exposed_mm"} in asked
}

test_pigtail_behind_a_device_is_not_asked_for if {
	rule.asks == set() with input as wire({"bare": false, "pigtail": true})
}

test_grounded_is_excluded if {
	"P1" in rule.excludes with input as wire({"ungrounded": false})
	not {"subject": "P1", "set": "uk"} in rule.applies with input as wire({"ungrounded": false})
}

test_battery_section_is_cited_on_the_battery if {
	clauses := {found.clause | some found in rule.breach with input as wire({"bare": true}); found.set == "us-federal"}
	clauses == {"183.460(a)"}
	elsewhere := {found.clause | some found in rule.breach with input as wire({"bare": true, "on_battery": false}); found.set == "us-federal"}
	elsewhere == {"183.455(a)"}
}

# 33 CFR 183.460(a) lets a boat built before 1 August 1985 have a switch instead;
# 183.455(a) still asks for a device.
cited(on) := {found.clause |
	doc := object.union(wire({"bare": true}), {"vessel": {"built_on": on}})
	some found in rule.breach with input as doc
	found.set == "us-federal"
}

test_older_boat_is_told_of_the_general_section if {
	cited("1985-07-31") == {"183.455(a)"}
	cited("1985-08-01") == {"183.460(a)"}
	cited("") == {"183.460(a)"}
}
