package driploop.rules.sources.battery_moves_test

import data.driploop.rules.sources.battery_moves as rule

doc(facts) := {"batteries": {"house": object.union({"path": "components.house", "cranking_given": false, "bypass": []}, facts)}}

# 20 kg: twice its weight is 392.3 N, less than 90 lbf = 400.3 N.
good := {"movement_mm": 5, "test_force_n": 400.34, "test_time_s": 60, "pulls": 5, "twice_weight_n": 392.3}

found(facts) := {[f.set, f.severity] | some f in rule.breach with input as doc(object.union(good, facts)); f.severity}

far(mm) := {f.set | some f in rule.breach with input as doc(object.union(good, {"movement_mm": mm}))}

test_movement_at_and_over_each_limit if {
	far(10) == set()
	far(10.1) == {"international"}
	far(25.4) == {"international"}
	far(25.5) == {"international", "us-federal", "us-voluntary"}
}

test_force_is_the_lesser_of_90_lbf_and_twice_the_weight if {
	found({"test_force_n": 392.3}) == set()
	found({"test_force_n": 392.2}) == {["international", "caution"], ["us-federal", "caution"], ["us-voluntary", "caution"]}

	# 40 kg: twice its weight is 784.5 N, so that 90 lbf is enough but for ISO.
	found({"twice_weight_n": 784.5, "test_force_n": 400.34}) == {["international", "caution"]}
	found({"twice_weight_n": 784.5, "test_force_n": 400.2}) == {["international", "caution"], ["us-federal", "caution"], ["us-voluntary", "caution"]}
}

test_each_pull_for_a_minute_in_five_directions if {
	found({"test_time_s": 59}) == {["us-federal", "caution"], ["us-voluntary", "caution"]}
	found({"pulls": 4}) == {["us-federal", "caution"], ["us-voluntary", "caution"]}
}

test_the_weight_is_asked_only_below_90_lbf if {
	asked := rule.asks with input as doc({"test_force_n": 500})
	{a.set | some a in asked; a.fact == "twice_weight_n"} == {"international"}
	light := rule.asks with input as doc({"test_force_n": 300})
	count({a.set | some a in light; a.fact == "twice_weight_n"}) == 3
}

test_moving_too_far_needs_no_other_fact if {
	count(rule.breach) == 3 with input as doc({"movement_mm": 40})
}
