package driploop.rules.penetrations.vapour_bulkhead_holed_test

import data.driploop.rules.penetrations.vapour_bulkhead_holed as rule

# A bulkhead of 1.2 m, a third of which is over 12 in.
hole(facts) := {"penetrations": {"cable-hole": object.union(
	{
		"path": "penetrations.cable-hole", "touches": [], "maker_allows": [], "vapour_bulkhead": true,
		"passing": 2, "panel_third_mm": 400,
	},
	facts,
)}}

# found gives clause and severity of what is found.
found(facts) := {[f.clause, object.get(f, "severity", "danger")] | some f in rule.breach with input as hole(facts)}

asked(facts) := {a.fact | some a in rule.asks with input as hole(facts)}

# 33 CFR 183.410(c)(2): 12 in = 304.8 mm.
test_open_hole_at_the_line_and_above if {
	found({"seal_kind": "none", "hole_height_mm": 304.8, "gap_mm": 3}) == {["183.410(c)(2)", "danger"]}
	found({"seal_kind": "none", "hole_height_mm": 304.9, "gap_mm": 3}) == set()
}

test_low_bulkhead_counts_by_its_third if {
	found({"seal_kind": "none", "panel_third_mm": 200, "hole_height_mm": 200, "gap_mm": 3}) == {["183.410(c)(2)", "danger"]}
	found({"seal_kind": "none", "panel_third_mm": 200, "hole_height_mm": 210, "gap_mm": 3}) == set()
}

# 33 CFR 183.410(c)(3): 1/4 in = 6.35 mm.
test_gap_at_the_limit_and_over if {
	found({"seal_kind": "grommet", "ip_immersion": false, "hole_height_mm": 600, "gap_mm": 6.35}) == set()
	found({"seal_kind": "grommet", "ip_immersion": false, "hole_height_mm": 600, "gap_mm": 6.4}) == {["183.410(c)(3)", "danger"]}
	found({"seal_kind": "none", "hole_height_mm": 600, "gap_mm": 20}) == {["183.410(c)(3)", "danger"]}
}

test_unproven_seal_below_the_line_is_less_grave if {
	found({"seal_kind": "gland", "ip_immersion": false, "hole_height_mm": 100}) == {["183.410(c)(2)", "warning"]}
	found({"seal_kind": "gland", "ip_immersion": false, "hole_height_mm": 600}) == set()
}

test_seal_proven_against_immersion_serves_at_any_height if {
	found({"seal_kind": "gland", "ip_immersion": true, "hole_height_mm": 100, "gap_mm": 20}) == set()
}

test_open_hole_without_a_cable if {
	found({"seal_kind": "none", "hole_height_mm": 600, "gap_mm": 3, "passing": 0}) == {["183.410(c)(3)", "danger"]}
}

test_asks_only_what_can_decide if {
	asked({"seal_kind": "none", "hole_height_mm": 600}) == {"gap_mm", "passing"}
	asked({"seal_kind": "none", "hole_height_mm": 100}) == {"panel_third_mm", "gap_mm", "passing"}
	asked({"seal_kind": "compound", "hole_height_mm": 600}) == set()
	asked({"seal_kind": "compound", "hole_height_mm": 100}) == {"panel_third_mm", "ip_immersion"}
	asked({"seal_kind": "boot", "hole_height_mm": 600, "gap_mm": 3}) == {"gap_mm"}
	asked({"seal_kind": "boot", "hole_height_mm": 600, "gap_mm": 10}) == {"gap_mm", "ip_immersion"}
}

test_applies_to_bulkheads_against_petrol if {
	rule.applies == {"cable-hole"} with input as hole({})
	rule.excludes == {"cable-hole"} with input as hole({"vapour_bulkhead": false})
	rule.excludes == set() with input as {"penetrations": {"cable-hole": {"path": "penetrations.cable-hole"}}}
}
