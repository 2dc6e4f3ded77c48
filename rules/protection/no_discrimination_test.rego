package driploop.rules.protection.no_discrimination_test

import data.driploop.rules.protection.no_discrimination as rule

device(how) := {"devices": {"branch": {
	"path": "components.branch", "kind": "fuse", "purpose": "branch", "loads": ["lamp"], "parallel": "", "machine": "",
	"discrimination": how, "opens_too": "main",
}}}

others(how) := {found.figures.others |
	some found in rule.breach with input as device(how)
	found.subject in rule.applies with input as device(how)
}

test_device_ahead_opens_too if {
	others("none") == {"main"}
}

test_device_that_opens_alone if {
	others("sure") == set()
	rule.applies == {"branch"} with input as device("sure")
}

test_what_the_gates_leave_open_is_left_out if {
	others("either") == set()
	rule.excludes == {"branch"} with input as device("either")
	rule.excludes == {"branch"} with input as device("alone")
}
