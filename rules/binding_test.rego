package driploop.binding_test

import data.driploop.binding

test_petrol_engine_binds_33_cfr_183 if {
	binding.binds["33-cfr-183"] == true with input as {"vessel": {"petrol": true}}
}

test_no_petrol_engine_leaves_33_cfr_183_as_reference if {
	binding.binds["33-cfr-183"] == false with input as {"vessel": {"petrol": false}}
}

test_engines_not_stated_leave_33_cfr_183_open if {
	not binding.binds["33-cfr-183"] with input as {"vessel": {}}
	not "33-cfr-183" in object.keys(binding.binds) with input as {"vessel": {}}
}

test_service_decides_46_cfr if {
	binds := binding.binds with input as {"vessel": {"service": "small-passenger"}}
	binds == {
		"46-cfr-28": false, "46-cfr-143": false, "46-cfr-169": false,
		"46-cfr-182": true, "46-cfr-183": true,
	}
}

test_recreational_vessel_is_under_no_part_of_46_cfr if {
	binds := binding.binds with input as {"vessel": {"service": "recreational"}}
	every part in ["46-cfr-28", "46-cfr-58", "46-cfr-111", "46-cfr-129", "46-cfr-143", "46-cfr-169", "46-cfr-182", "46-cfr-183"] {
		binds[part] == false
	}
}

test_service_not_stated_leaves_46_cfr_open if {
	object.keys(binding.binds) == set() with input as {"vessel": {}}
}
