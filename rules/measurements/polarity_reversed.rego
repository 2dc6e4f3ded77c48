# METADATA
# title: Positive and negative swapped
# description: >-
#   With the pair swapped a switch or fuse sits in the wrong conductor and the case of the equipment can be live. Electronics
#   burn, pumps run backwards.
# schemas:
#   - input: schema.facts
# custom:
#   id: measurements/polarity-reversed
#   severity: danger
#   subject: tests
#   applies: every test of polarity
#   needs: [polarity]
#   decides: [kind]
#   says: "the polarity was measured as reversed"
#   remedy: "Isolate the circuit, swap the pair where it was crossed, and test again."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "polarity at each load agrees with the wiring", trust: practice}
#   related: [documents/not-tested]
#   since: 0.1.0
package driploop.rules.measurements.polarity_reversed

excludes contains id if {
	some id, test in input.tests
	test.kind != "polarity"
}

applies contains id if {
	some id, test in input.tests
	test.kind == "polarity"
}

breach contains {"subject": id, "figures": {}, "limit": {}} if {
	some id, test in input.tests
	test.kind == "polarity"
	test.polarity == "reversed"
}
