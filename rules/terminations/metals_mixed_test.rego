package driploop.rules.terminations.metals_mixed_test

import data.driploop.rules.terminations.metals_mixed as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

most(gap, exposure) := {found.limit.gap_v | some found in rule.breach with input as doc({"terminal": "ring", "faces": "tin on copper", "anodic_gap_v": gap, "exposure": exposure})}

test_dry_space if {
	most(0.25, "dry") == set()
	most(0.26, "dry") == {0.25}
}

test_damp_and_wetter if {
	every exposure in ["damp", "wet", "washed", "immersed"] {
		most(0.15, exposure) == set()
		most(0.16, exposure) == {0.15}
	}
}

test_far_apart_is_a_breach_wherever if {
	found := rule.breach with input as doc({"terminal": "ring", "faces": "tin on aluminium", "anodic_gap_v": 0.3})
	count(found) == 1
}

test_asks_for_the_place_only_when_it_matters if {
	rule.asks == set() with input as doc({"anodic_gap_v": 0.1})
	count(rule.asks) == 1 with input as doc({"anodic_gap_v": 0.2})
}
