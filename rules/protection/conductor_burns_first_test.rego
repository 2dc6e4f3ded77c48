package driploop.rules.protection.conductor_burns_first_test

import data.driploop.rules.protection.conductor_burns_first as rule

# wire is 1.309 mm² with 105 °C PVC: k = 87.4, k²·S² = 13,090 A²s (worked example
# for IEC 60364-4-43, 434.5.2).
wire(facts) := {"conductors": {"P1": object.union(
	{
		"path": "conductors.P1", "from": "bus.a", "to": "pump.pos", "role": "positive", "duty": "normal", "in_housing": false,
		"pigtail": false, "on_battery": false, "fed": true, "output_of": "", "bare_from": "", "bare_via": "", "behind_device": true,
		"size": "16 AWG", "ungrounded": true, "guard_fused": true, "guarded_by": "fuse", "withstand_a2s": 13090,
	},
	facts,
)}}

limits(facts) := {found.limit.let_through_a2s | some found in rule.breach with input as wire(facts)}

test_at_the_withstand if {
	limits({"let_through_up_to_a2s": 13090, "let_through_a2s": 13090}) == set()
	limits({"let_through_up_to_a2s": 13091, "let_through_a2s": 13091}) == {13090}
}

test_what_it_leaves_out if {
	every facts in [{"duty": "cranking"}, {"ungrounded": false}, {"behind_device": false}, {"guard_fused": false}] {
		rule.applies == set() with input as wire(facts)
		rule.excludes == {"P1"} with input as wire(facts)
	}
	rule.applies == {"P1"} with input as wire({})
}

asked(facts) := {ask.fact | some ask in rule.asks with input as wire(facts)}

test_energy_matters_only_where_the_most_of_it_is_too_much if {
	asked({"let_through_up_to_a2s": 13090}) == set()
	asked({"let_through_up_to_a2s": 13091}) == {"let_through_a2s"}
	limits({"let_through_up_to_a2s": 13091}) == set()
}

test_silent_without_the_energy if {
	limits({}) == set()
}
