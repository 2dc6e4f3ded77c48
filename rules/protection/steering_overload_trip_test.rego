package driploop.rules.protection.steering_overload_trip_test

import data.driploop.rules.protection.steering_overload_trip as rule

device(facts) := {"devices": {"helm": object.union(
	{"path": "components.helm", "kind": "breaker", "purpose": "motor", "loads": ["pump"], "parallel": "", "machine": "", "steering": true},
	facts,
)}}

kinds(facts) := {found.figures.kind | some found in rule.breach with input as device(facts)}

# 46 CFR 58.25-55(a): instantaneous trip.
test_magnetic_breaker if {
	kinds({"curve": "magnetic"}) == set()
}

test_what_opens_on_overload if {
	kinds({"curve": "thermal"}) == {"thermal breaker"}
	kinds({"curve": "thermal-magnetic"}) == {"thermal-magnetic breaker"}
	kinds({"kind": "fuse"}) == {"fuse"}
}

test_curve_is_asked_of_breakers if {
	rule.asks == {{"subject": "helm", "fact": "curve"}} with input as device({})
	rule.asks == set() with input as device({"kind": "fuse"})
}

test_other_devices_are_left_out if {
	rule.applies == {"helm"} with input as device({})
	rule.applies == set() with input as device({"steering": false})
	rule.excludes == {"helm"} with input as device({"steering": false})
}
