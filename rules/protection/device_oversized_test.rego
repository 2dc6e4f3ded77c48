package driploop.rules.protection.device_oversized_test

import data.driploop.rules.protection.device_oversized as rule

# conductor is one behind a fuse; given facts replace its own. 8 AWG of 105 degC
# may carry 80 A by Table 5, and 68 A in an engine space by note 1.
conductor(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "fuse.load", "to": "winch.pos", "role": "positive", "duty": "normal",
		"in_housing": false, "pigtail": false, "on_battery": false, "fed": true, "ungrounded": true, "bare": false,
		"size": "8 AWG", "guarded_by": "fuse", "tap": false,
	},
	facts,
)}}

# behind is the conductor behind a device of a rating, where it may carry some
# amperes.
behind(guard_a, allowable_a) := conductor({
	"guard_a": guard_a, "table5_a": 80, "allowable_a": allowable_a,
	"guard_table5_pct": (100 * guard_a) / 80, "guard_allowable_pct": (100 * guard_a) / allowable_a,
})

severities(set, doc) := {object.get(found, "severity", "danger") | some found in rule.breach with input as doc; found.set == set}

limit(set, doc) := {found.limit.guard_a | some found in rule.breach with input as doc; found.set == set}

# 33 CFR 183.455(c)(1): 150 % of 80 A is 120 A, whatever the space.
test_federal_at_150_percent_of_table_5 if {
	severities("us-federal", behind(120, 80)) == set()
	severities("us-federal", behind(120, 68)) == set()
	severities("us-federal", behind(121, 80)) == {"danger"}
	limit("us-federal", behind(125, 80)) == {120}
}

test_uk_at_capacity if {
	severities("uk", behind(80, 80)) == set()
	severities("uk", behind(81, 80)) == {"danger"}
	severities("uk", behind(70, 68)) == {"danger"}
}

# 46 CFR 183.380(d): 68 A lets 70 A stand, the next standard size.
test_next_standard_size_is_allowed if {
	every set in ["us-inspected", "us-voluntary"] {
		severities(set, behind(70, 68)) == set()
		severities(set, behind(80, 68)) == {"caution"}
		limit(set, behind(80, 68)) == {70}
		severities(set, behind(102, 68)) == {"caution"}
		severities(set, behind(103, 68)) == {"danger"}
	}
}

# 11 A: the next standard size, 15 A, stays under 150 %; 5.2 A: 7.5 A does; 1.1 A:
# 2 A does not.
test_next_standard_size_ends_at_150_percent if {
	limit("us-voluntary", behind(20, 11)) == {15}
	limit("us-voluntary", behind(10, 5.2)) == {7.5}
	limit("us-voluntary", behind(5, 1.2)) == {1.2 * 1.5}
}

test_silent_without_figures if {
	count(rule.breach) == 0 with input as conductor({})
}

sets(facts) := {applying.set | some applying in rule.applies with input as conductor(facts)}

test_applies_in_every_set if {
	sets({}) == {"us-federal", "us-inspected", "uk", "us-voluntary"}
}

# 33 CFR 183.455(e); the other sets do not have these exemptions.
test_federal_exemptions if {
	every duty in ["ignition-secondary", "resistance"] {
		not "us-federal" in sets({"duty": duty})
		"uk" in sets({"duty": duty})
	}
	not "us-federal" in sets({"pigtail": true, "exposed_mm": 177.7})
	"us-federal" in sets({"pigtail": true, "exposed_mm": 177.8})
}

test_pigtail_of_unknown_length_asks_for_it if {
	not "us-federal" in sets({"pigtail": true})
	rule.asks == {{"subject": "P1", "set": "us-federal", "fact": "exposed_mm"}} with input as conductor({"pigtail": true})
	rule.asks == set() with input as conductor({})
}

# Communication equipment is exempt from conductor sizes (183.425(g)), not from
# overcurrent protection (183.455).
test_communication_is_not_exempt if {
	"us-federal" in sets({"duty": "communication"})
}

test_excludes_what_is_surely_not_meant if {
	every facts in [{"duty": "cranking"}, {"ungrounded": false}, {"bare": true}, {"fed": false}] {
		"P1" in rule.excludes with input as conductor(facts)
	}
	rule.excludes == set() with input as conductor({})
}

# link is a tap to a device of its own: 60 A on 10 AWG (60 A by Table 5) behind a
# main device of 200 A.
link(facts) := conductor(object.union(
	{
		"size": "10 AWG", "guard_a": 200, "table5_a": 60, "allowable_a": 60, "guard_table5_pct": 333, "guard_allowable_pct": 333,
		"tap": true, "tap_table5_pct": 100, "tap_allowable_pct": 100, "length_mm": 177.8,
	},
	facts,
))

# 33 CFR 183.455(b)(1): 7 in, 177.8 mm.
test_a_short_link_is_its_own_device_s if {
	some set in ["us-federal", "us-voluntary"]
	severities(set, link({})) == set()
	severities(set, link({"length_mm": 178})) == {"danger"}
	severities(set, link({"tap_table5_pct": 151, "tap_allowable_pct": 151})) == {"danger"}
}

test_no_document_else_lets_a_link_go if {
	severities("us-inspected", link({})) == {"danger"}
	severities("uk", link({})) == {"danger"}
}

test_a_link_of_unknown_length_is_asked_for if {
	{a.fact | some a in rule.asks} == {"length_mm", "tap_table5_pct", "tap_allowable_pct"} with input as link({})
}
