# METADATA
# title: Insulation resistance too low
# description: >-
#   Current leaks past the insulation: through a chafed spot, a wet joint or a damp motor. It corrodes metal under water day
#   and night, drains the battery, and gets worse.
# schemas:
#   - input: schema.facts
# custom:
#   id: measurements/insulation-low
#   severity: warning
#   subject: tests
#   applies: every test of insulation
#   needs: [resistance_mohm, test_v]
#   decides: [kind]
#   says: "{what}"
#   remedy: "Part the circuit and test each half until the wet or chafed spot is found; take electronics off before the test."
#   sources:
#     - {set: workmanship, source: iec-60364-6, clause: "table of minimum insulation resistance", asks: "at least 0.5 MΩ in circuits up to 50 V, tested with 250 V DC", trust: secondary}
#   related: [grounding/no-ground-detector]
#   since: 0.1.0
package driploop.rules.measurements.insulation_low

# 0.5 MΩ and 250 V, for installations ashore up to 50 V; older republications give
# 0.25 MΩ. No figure for boats was found.
limits := {"workmanship": {"resistance_mohm": 500000000, "test_v": 250}}

excludes contains id if {
	some id, test in input.tests
	test.kind != "insulation"
}

applies contains id if {
	some id, test in input.tests
	test.kind == "insulation"
}

breach contains {
	"subject": id,
	"figures": {"what": "the insulation leaks", "resistance_mohm": test.resistance_mohm},
	"limit": {"resistance_mohm": limits.workmanship.resistance_mohm},
} if {
	some id, test in input.tests
	test.kind == "insulation"
	test.resistance_mohm < limits.workmanship.resistance_mohm
}

# A meter of a few volts does not find what 250 V does: the reading proves little.
breach contains {
	"subject": id,
	"severity": "notice",
	"figures": {"what": "the voltage of the test was too low to prove the insulation", "test_v": test.test_v},
	"limit": {"test_v": limits.workmanship.test_v},
} if {
	some id, test in input.tests
	test.kind == "insulation"
	test.test_v < limits.workmanship.test_v
}
