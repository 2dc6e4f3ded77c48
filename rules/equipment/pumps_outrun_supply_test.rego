package driploop.rules.equipment.pumps_outrun_supply_test

import data.driploop.rules.equipment.pumps_outrun_supply as rule

vessel(facts) := {"vessel": object.union({"path": "vessel", "bilge_pumps": 2, "bilge_pumps_most": 2, "pumps_at": "fuse f"}, facts)}

test_at_the_limit_and_over if {
	count(rule.breach) == 0 with input as vessel({"pumps_share_pct": 100})
	count(rule.breach) == 1 with input as vessel({"pumps_share_pct": 100.1})
	count(rule.breach) == 0 with input as vessel({})
}

test_applies_from_two_pumps_on if {
	rule.applies == {"vessel"} with input as vessel({})
	rule.excludes == {"vessel"} with input as vessel({"bilge_pumps": 1})
	rule.applies == set() with input as vessel({"bilge_pumps": 0})
	rule.excludes == set() with input as {"vessel": {"path": "vessel", "bilge_pumps_most": 2}}
	rule.excludes == {"vessel"} with input as {"vessel": {"path": "vessel", "bilge_pumps_most": 1}}
}
