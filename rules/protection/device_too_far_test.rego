package driploop.rules.protection.device_too_far_test

import data.driploop.rules.protection.device_too_far as rule

# run is a way from a battery, all of it its own; given facts replace others.
run(facts) := {"runs": {"P1 from house.pos": object.union_n([
	{
		"path": "conductors.P1", "conductor": "P1", "source": "house.pos", "source_kind": "battery",
		"device": "main-fuse", "duty": "normal", "self_limiting": false, "via": ["P1"],
		"own_from": "house.pos", "own_kind": "battery",
	},
	{own: value |
		some fact, own in {"length_mm": "own_mm", "enclosed": "own_enclosed", "source_kind": "own_kind"}
		value := facts[fact]
	},
	facts,
])}}

# sets names the practice sets that find a breach.
sets(facts) := {found.set | some found in rule.breach with input as run(facts)}

# 72 in is 1828.8 mm: 33 CFR 183.460(a).
test_battery_at_72_in if {
	not "us-federal" in sets({"length_mm": 1828.8, "enclosed": false})
	"us-federal" in sets({"length_mm": 1828.9, "enclosed": false})
	not "us-voluntary" in sets({"length_mm": 1828.8, "enclosed": true})
	"us-voluntary" in sets({"length_mm": 1828.9, "enclosed": true})
}

test_federal_72_in_needs_no_sheath if {
	not "us-federal" in sets({"length_mm": 1000, "enclosed": false})
	"us-voluntary" in sets({"length_mm": 1000, "enclosed": false})
}

# 7 in is 177.8 mm: 33 CFR 183.455(b)(1).
test_other_source_at_7_in if {
	sets({"source_kind": "alternator", "length_mm": 177.8, "enclosed": false}) == set()
	sets({"source_kind": "alternator", "length_mm": 177.9, "enclosed": false}) == {"us-federal", "us-voluntary"}
}

# 40 in is 1016 mm: 33 CFR 183.455(b)(2).
test_other_source_enclosed_at_40_in if {
	sets({"source_kind": "alternator", "length_mm": 1016, "enclosed": true}) == set()
	sets({"source_kind": "alternator", "length_mm": 1016.1, "enclosed": true}) == {"us-federal", "us-voluntary"}
}

test_international_at_200_mm_and_1800_mm if {
	not "international" in sets({"length_mm": 200, "enclosed": false})
	"international" in sets({"length_mm": 200.1, "enclosed": false})
	not "international" in sets({"length_mm": 1800, "enclosed": true})
	"international" in sets({"length_mm": 1800.1, "enclosed": true})
}

# A branch from the feed of a cranking motor is measured from where it leaves it:
# 7 in is 177.8 mm, 40 in 1016 mm (ABYC E-11 as reported); 33 CFR 183.460(a)
# measures from the battery.
branch(facts) := object.union({"own_kind": "cranking-feed", "own_from": "isolator.out"}, facts)

test_branch_of_a_cranking_feed_at_7_in if {
	sets(branch({"length_mm": 1500, "enclosed": false, "own_mm": 177.8, "own_enclosed": false})) == set()
	sets(branch({"length_mm": 1500, "enclosed": false, "own_mm": 177.9, "own_enclosed": false})) == {"us-voluntary"}
	sets(branch({"length_mm": 1900, "enclosed": false, "own_mm": 177.8, "own_enclosed": false})) == {"us-federal"}
	some found in rule.breach with input as run(branch({"length_mm": 1500, "enclosed": false, "own_mm": 190, "own_enclosed": false}))
	found.figures == {"length_mm": 190, "device": "main-fuse", "source": "isolator.out"}
}

test_branch_of_a_cranking_feed_enclosed_at_40_in if {
	sets(branch({"length_mm": 1500, "enclosed": false, "own_mm": 1016, "own_enclosed": true})) == set()
	sets(branch({"length_mm": 1500, "enclosed": false, "own_mm": 1016.1, "own_enclosed": true})) == {"us-voluntary"}
	facts := run(branch({"length_mm": 1500, "enclosed": false, "own_mm": 190}))
	{[ask.set, ask.fact] | some ask in rule.asks} == {["us-voluntary", "own_enclosed"]} with input as facts
}

# From memory, unverified, as the limits of ISO 10133 themselves.
test_branch_of_a_cranking_feed_international if {
	sets(branch({"length_mm": 1500, "own_mm": 200, "own_enclosed": false})) == {"us-voluntary"}
	"international" in sets(branch({"length_mm": 1500, "own_mm": 200.1, "own_enclosed": false}))
	"international" in sets(branch({"length_mm": 1500, "own_mm": 1800.1, "own_enclosed": true}))
}

test_too_far_however_enclosed_needs_no_enclosure if {
	sets({"length_mm": 1829}) == {"us-federal", "us-voluntary", "international"}
}

test_enclosure_not_stated_is_asked_for if {
	sets({"length_mm": 1000}) == set()
	{ask.set | some ask in rule.asks} == {"us-voluntary", "international"} with input as run({"length_mm": 1000})
	rule.asks == set() with input as run({"length_mm": 177.8})
}

test_length_not_stated_is_silent if {
	sets({"enclosed": false}) == set()
}

test_cites_the_clause_for_the_source if {
	some found in rule.breach with input as run({"length_mm": 1829})
	found.set == "us-federal"
	found.clause == "183.460(a)"
}

applies(facts) := {applying.set | some applying in rule.applies with input as run(facts)}

test_applies_to_batteries_in_every_set if {
	applies({}) == {"us-federal", "us-voluntary", "international"}
}

test_leaves_other_sources_of_international_to_the_charging_rule if {
	applies({"source_kind": "charger"}) == {"us-federal", "us-voluntary"}
}

test_does_not_apply_to_self_limiting_sources if {
	applies({"source_kind": "charger", "self_limiting": true}) == set()
}

test_cranking_feed_is_excluded if {
	applies({"duty": "cranking"}) == set()
	rule.excludes == {"P1 from house.pos"} with input as run({"duty": "cranking"})
}

# 33 CFR 183.460(a): only before 1 August 1985, only with a switch, only if the
# record says so, and only for the federal set.
freed(on, switched, kind) if {
	doc := object.union(
		run({"length_mm": 2400, "switched": switched, "source_kind": kind}),
		{"vessel": {"built_on": on}},
	)
	{"subject": "P1 from house.pos", "set": "us-federal"} in rule.excludes with input as doc
}

test_older_boat_with_a_switch_is_freed if {
	freed("1985-07-31", true, "battery")
	not freed("1985-08-01", true, "battery")
	not freed("1985-07-31", false, "battery")
	not freed("", true, "battery")
	not freed("1985-07-31", true, "alternator")
}

test_older_boat_is_freed_by_the_federal_set_alone if {
	doc := object.union(run({"length_mm": 2400, "switched": true}), {"vessel": {"built_on": "1979-05-01"}})
	{freed | some freed in rule.excludes with input as doc} == {{"subject": "P1 from house.pos", "set": "us-federal"}}
	{found.set | some found in rule.breach with input as doc} == {"us-federal", "us-voluntary", "international"}
}
