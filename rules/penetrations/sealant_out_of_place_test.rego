package driploop.rules.penetrations.sealant_out_of_place_test

import data.driploop.rules.penetrations.sealant_out_of_place as rule

bed(facts) := {"penetrations": {"plug": object.union({"path": "penetrations.plug", "touches": [], "maker_allows": []}, facts)}}

wheres(facts) := {f.figures.where | some f in rule.breach with input as bed(facts)}

asked(facts) := {a.fact | some a in rule.asks with input as bed(facts)}

test_silicone_and_butyl_hold_above_water_only if {
	every compound in ["silicone-acid", "silicone-neutral", "butyl"] {
		wheres({"compound": compound, "under_water": true}) == {"below water"}
		wheres({"compound": compound, "under_water": false, "place": "deck", "seal_kind": "gland"}) == set()
	}
}

test_polyurethane_holds_below_water_but_not_in_fuel if {
	wheres({"compound": "polyurethane", "under_water": true, "place": "below-water"}) == set()
	wheres({"compound": "polyurethane", "under_water": false, "place": "fuel"}) == {"where fuel reaches it"}
	wheres({"compound": "butyl", "under_water": false, "place": "fuel"}) == {"where fuel reaches it"}
	wheres({"compound": "silicone-neutral", "under_water": false, "place": "fuel"}) == set()
}

test_acid_cure_stays_away_from_contacts if {
	wheres({"compound": "silicone-acid", "under_water": false, "place": "electrical", "seal_kind": "gland"}) == {"at electrical parts"}
	wheres({"compound": "silicone-acid", "under_water": false, "place": "deck", "seal_kind": "connector"}) == {"around a connector"}
	wheres({"compound": "silicone-neutral", "under_water": false, "place": "electrical", "seal_kind": "connector"}) == set()
}

test_asks_what_the_family_does_not_stand if {
	asked({"compound": "silicone-neutral"}) == {"under_water"}
	asked({"compound": "polyurethane"}) == {"place"}
	asked({"compound": "silicone-acid"}) == {"under_water", "place", "seal_kind"}
}

test_other_families_are_left_out if {
	every compound in ["polysulphide", "hybrid", "none"] {
		rule.excludes == {"plug"} with input as bed({"compound": compound})
		rule.applies == set() with input as bed({"compound": compound})
	}
	rule.applies == {"plug"} with input as bed({"compound": "butyl"})
	rule.excludes == set() with input as bed({})
}
