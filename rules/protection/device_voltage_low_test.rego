package driploop.rules.protection.device_voltage_low_test

import data.driploop.rules.protection.device_voltage_low as rule

devices(rated, nominal) := {"devices": {"fuse": {"path": "components.fuse", "kind": "fuse", "purpose": "normal", "rated_v": rated, "nominal_v": nominal}}}

test_breach_just_under if {
	rule.breach == {{"subject": "fuse", "figures": {"rated_v": 11.9, "nominal_v": 12}, "limit": {"rated_v": 12}}} with input as devices(11.9, 12)
}

test_silent_at_the_limit if {
	count(rule.breach) == 0 with input as devices(12, 12)
}

test_silent_above if {
	count(rule.breach) == 0 with input as devices(32, 12)
}

test_silent_without_the_rating if {
	count(rule.breach) == 0 with input as {"devices": {"fuse": {"path": "components.fuse", "kind": "fuse", "purpose": "normal", "nominal_v": 12}}}
}
