# METADATA
# title: More voltage lost than the wiring accounts for
# description: >-
#   The conductors alone cannot lose that much. Somewhere on the way a terminal, splice or contact has resistance of its own;
#   it will heat up under load and can start a fire.
# schemas:
#   - input: schema.facts
# custom:
#   id: measurements/drop-above-computed
#   severity: warning
#   subject: tests
#   applies: every test of voltage drop
#   needs: [current_a, drop_v, computed_drop_v]
#   asks: [allowed_drop_v, tolerance_v]
#   decides: [kind]
#   says: "{drop} was lost at {current}; the conductors account for {computed}, with {tolerance} of tolerance"
#   remedy: "Measure across each joint of the circuit under load, and make the bad one anew."
#   sources:
#     - {set: workmanship, source: physics, clause: "", asks: "the drop measured is that of the solved network at the same current, within the tolerance of both readings", trust: computed}
#   since: 0.1.0
package driploop.rules.measurements.drop_above_computed

excludes contains id if {
	some id, test in input.tests
	test.kind != "voltage-drop"
}

applies contains id if {
	some id, test in input.tests
	test.kind == "voltage-drop"
}

# A drop within the computed one is in order whatever the instrument.
asks contains {"subject": id, "fact": "allowed_drop_v"} if {
	some id, test in input.tests
	test.drop_v > test.computed_drop_v
}

breach contains {
	"subject": id,
	"figures": {"drop_v": test.drop_v, "computed_v": test.computed_drop_v, "tolerance_v": test.tolerance_v, "current_a": test.current_a},
	"limit": {"drop_v": test.allowed_drop_v},
} if {
	some id, test in input.tests
	test.kind == "voltage-drop"
	test.drop_v > test.allowed_drop_v
}
