package driploop.rules.penetrations.fastener_metal_unfit_test

import data.driploop.rules.penetrations.fastener_metal_unfit as rule

hole(facts) := {"penetrations": {"plug": object.union(
	{
		"path": "penetrations.plug", "touches": [], "maker_allows": [], "metal_panel": true, "fastener_count": 4,
		"fastener_pair": "stainless-316 in aluminium", "fasteners_isolated": false,
	},
	facts,
)}}

subjects(facts) := {f.subject | some f in rule.breach with input as hole(facts)}

# 0.15 V in harsh places, 0.25 V in normal ones: design guide without a standard.
test_harsh_place_at_the_limit_and_over if {
	every exposure in ["damp", "wet", "washed", "immersed"] {
		subjects({"exposure": exposure, "fastener_gap_v": 0.15}) == set()
		subjects({"exposure": exposure, "fastener_gap_v": 0.2}) == {"plug"}
	}
}

test_dry_place_at_the_limit_and_over if {
	subjects({"exposure": "dry", "fastener_gap_v": 0.25}) == set()
	subjects({"exposure": "dry", "fastener_gap_v": 0.3}) == {"plug"}
}

# Stainless 0.50 V against aluminium 0.90 V on the anodic index.
test_isolation_exempts if {
	subjects({"exposure": "washed", "fastener_gap_v": 0.4}) == {"plug"}
	subjects({"exposure": "washed", "fastener_gap_v": 0.4, "fasteners_isolated": true}) == set()
}

test_asks_nothing_more_of_near_metals if {
	count(rule.asks) == 0 with input as hole({"fastener_gap_v": 0.1})
	{a.fact | some a in rule.asks} == {"exposure", "fasteners_isolated"} with input as hole({"fastener_gap_v": 0.2})
}

test_applies_to_fasteners_in_metal if {
	rule.applies == {"plug"} with input as hole({})
	rule.excludes == {"plug"} with input as hole({"metal_panel": false})
	rule.excludes == {"plug"} with input as hole({"fastener_count": 0})
}
