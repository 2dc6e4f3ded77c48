package driploop.rules.conductors.wrong_cable_type_test

import data.driploop.rules.conductors.wrong_cable_type as rule

wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "", "bare_from": "", "bare_via": "",
	},
	facts,
)}}

found(facts) := {one.figures.standard |
	some one in rule.breach with input as wire(facts)
	"P1" in rule.applies with input as wire(facts)
}

# 33 CFR 183.430(a), 183.435(a).
test_accepted_standards if {
	every standard in ["ul-1426", "sae-j1127", "sae-j1128", "ieee-45", "sjto"] {
		found({"standard": standard}) == set()
	}
}

test_other_standards if {
	found({"standard": "iso-6722"}) == {"iso-6722"}
	found({"standard": "none"}) == {"none"}
}

# 33 CFR 183.430(b).
test_exempt if {
	found({"standard": "none", "duty": "communication"}) == set()
	found({"standard": "none", "duty": "resistance"}) == set()
	found({"standard": "none", "duty": "cranking"}) == {"none"}
	found({"standard": "none", "role": "bonding"}) == set()
}

test_pigtail_at_7_in if {
	found({"standard": "none", "pigtail": true, "exposed_mm": 177.7}) == set()
	found({"standard": "none", "pigtail": true, "exposed_mm": 177.8}) == {"none"}
	rule.asks == {{"subject": "P1", "fact": "exposed_mm"}} with input as wire({"standard": "none", "pigtail": true})
	rule.asks == set() with input as wire({"standard": "ul-1426", "pigtail": true})
}

test_silent_without_a_marking if {
	found({}) == set()
}
