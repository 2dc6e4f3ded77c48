package driploop.rules.conductors.overloaded_test

import data.driploop.rules.conductors.overloaded as rule

# conductor is one that carries nothing out of the ordinary; given facts replace
# its own.
conductor(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "a.load", "to": "b.pos", "role": "positive", "duty": "normal",
		"in_housing": false, "pigtail": false, "on_battery": false, "fed": true, "size": "10 AWG",
	},
	facts,
)}}

breaches(facts) := count(found) if {
	found := rule.breach with input as conductor(facts)
}

applies(facts) if {
	"P1" in rule.applies with input as conductor(facts)
}

# 10 AWG of 105 degC: 60 A by Table 5, 51 A in an engine space by note 1.
test_at_and_over_the_limit if {
	breaches({"current_a": 60, "allowable_a": 60}) == 0
	breaches({"current_a": 60.1, "allowable_a": 60}) == 1
	breaches({"current_a": 51, "allowable_a": 51}) == 0
	breaches({"current_a": 52, "allowable_a": 51}) == 1
}

test_silent_without_either_figure if {
	breaches({"current_a": 60}) == 0
	breaches({"allowable_a": 60}) == 0
}

test_applies_to_both_poles if {
	applies({})
	applies({"role": "negative"})
	applies({"role": "control"})
}

# 33 CFR 183.425(g).
test_exemptions if {
	every duty in ["communication", "navigation", "resistance", "ignition-secondary", "cranking"] {
		not applies({"duty": duty})
		rule.excludes == {"P1"} with input as conductor({"duty": duty})
	}
	not applies({"in_housing": true})
	not applies({"role": "bonding"})
}

# "Less than seven inches": 177.8 mm itself is not exempt.
test_pigtail_ends_at_7_in if {
	not applies({"pigtail": true, "exposed_mm": 177.7})
	applies({"pigtail": true, "exposed_mm": 177.8})
}

test_pigtail_of_unknown_length_is_neither if {
	not applies({"pigtail": true})
	rule.excludes == set() with input as conductor({"pigtail": true})
}
