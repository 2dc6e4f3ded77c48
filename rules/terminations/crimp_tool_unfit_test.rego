package driploop.rules.terminations.crimp_tool_unfit_test

import data.driploop.rules.terminations.crimp_tool_unfit as rule

doc(facts) := {"ends": {"P1.to": object.union({"path": "conductors.P1.ends.to", "on": "lamp.pos", "on_kind": "lamp"}, facts)}}

good := {"terminal": "ring", "crimp_tool": "ratchet", "calibrated": true, "matching": true}

faults(facts) := count([f | some f in rule.breach with input as doc(object.union(good, facts))])

test_a_good_crimp_is_silent if {
	faults({}) == 0
	faults({"crimp_tool": "hydraulic"}) == 0
}

test_each_fault_alone if {
	faults({"crimp_tool": "plain"}) == 1
	faults({"crimp_tool": "hammer"}) == 1
	faults({"calibrated": false}) == 1
	faults({"matching": false}) == 1
}

test_silent_without_the_facts if {
	rule.breach == set() with input as doc({"terminal": "ring"})
}

test_only_crimped_terminals if {
	rule.excludes == {"P1.to"} with input as doc({"terminal": "solder-lug"})
	rule.applies == {"P1.to"} with input as doc({"terminal": "ring"})
}
