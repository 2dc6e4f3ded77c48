package driploop.rules.penetrations.sealant_attacks_panel_test

import data.driploop.rules.penetrations.sealant_attacks_panel as rule

bed(facts) := {"penetrations": {"port": object.union({"path": "penetrations.port", "touches": [], "maker_allows": []}, facts)}}

plastics(facts) := {f.figures.plastic | some f in rule.breach with input as bed(facts)}

test_fires_on_each_plastic if {
	every compound in ["polysulphide", "polyurethane"] {
		plastics({"compound": compound, "touches": ["frp", "acrylic", "pvc"]}) == {"acrylic", "pvc"}
	}
}

test_silent_on_other_materials if {
	plastics({"compound": "polysulphide", "touches": ["frp", "nylon", "acetal", "stainless-316"]}) == set()
}

test_silent_with_other_families if {
	every compound in ["silicone-neutral", "silicone-acid", "hybrid", "butyl", "none"] {
		plastics({"compound": compound, "touches": ["acrylic"]}) == set()
	}
}

test_maker_can_allow_it if {
	plastics({"compound": "polysulphide", "touches": ["acrylic", "abs"], "maker_allows": ["acrylic"]}) == {"abs"}
}

test_applies_to_two_families if {
	rule.applies == {"port"} with input as bed({"compound": "polyurethane"})
	rule.excludes == {"port"} with input as bed({"compound": "butyl"})
	rule.excludes == set() with input as bed({})
}
