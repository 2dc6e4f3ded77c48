# METADATA
# title: Readings that cannot be
# description: >-
#   The readings contradict each other or the system: a lead was swapped, a digit lost, or the test was not made. What is
#   judged by them is not proven.
# schemas:
#   - input: schema.facts
# custom:
#   id: measurements/reading-implausible
#   severity: notice
#   subject: tests
#   applies: every test of voltage drop or polarity
#   asks: [current_a, at_source_v, at_load_v, gain_v, tolerance_v, source_pct, load_pct, polarity, result]
#   decides: [kind]
#   says: "{odd}"
#   remedy: "Look at the instrument and its leads, and make the test again under load."
#   sources:
#     - {set: workmanship, source: physics, clause: "", asks: "a voltage falls on its way to the load, and a drop is read while current flows", trust: computed}
#     - {set: workmanship, source: common-practice, clause: "", asks: "the voltage at a battery lies between 75 and 130 % of nominal; a test with a fault found is not passed", trust: practice}
#   related: [measurements/drop-above-computed, measurements/polarity-reversed]
#   since: 0.1.0
package driploop.rules.measurements.reading_implausible

# Shares of the nominal voltage. The widest supply range that is in use for
# batteries, +30 and -25 %; from memory, unverified.
limits := {"workmanship": {"of a battery, at least": {"voltage_pct": 75}, "of a battery, at most": {"voltage_pct": 130}}}

least_pct := limits.workmanship["of a battery, at least"].voltage_pct

most_pct := limits.workmanship["of a battery, at most"].voltage_pct

judged := {"voltage-drop", "polarity"}

excludes contains id if {
	some id, test in input.tests
	kind := test.kind
	not kind in judged
}

applies contains id if {
	some id, test in input.tests
	test.kind in judged
}

asks contains {"subject": id, "fact": fact} if {
	some id, test in input.tests
	test.kind == "voltage-drop"
	some fact in ["current_a", "at_source_v", "at_load_v", "gain_v", "source_pct", "load_pct"]
}

asks contains {"subject": id, "fact": "tolerance_v"} if {
	some id, test in input.tests
	test.kind == "voltage-drop"
	test.gain_v > 0
}

asks contains {"subject": id, "fact": "polarity"} if {
	some id, test in input.tests
	test.kind == "polarity"
}

asks contains {"subject": id, "fact": "result"} if {
	some id, test in input.tests
	test.kind == "polarity"
	test.polarity == "reversed"
}

breach contains {
	"subject": id,
	"figures": {"odd": "more voltage at the load than at the source", "gain_v": test.gain_v},
	"limit": {"gain_v": test.tolerance_v},
} if {
	some id, test in input.tests
	test.kind == "voltage-drop"
	test.gain_v > test.tolerance_v
}

breach contains {
	"subject": id,
	"figures": {"odd": "no current flowed, so that nothing could drop", "current_a": test.current_a},
	"limit": {},
} if {
	some id, test in input.tests
	test.kind == "voltage-drop"
	test.current_a <= 0
}

breach contains {
	"subject": id,
	"figures": {"odd": "the voltage at the source is none of a battery of this system", "read_v": test.at_source_v, "voltage_pct": test.source_pct},
	"limit": {"voltage_pct": least_pct},
} if {
	some id, test in input.tests
	test.kind == "voltage-drop"
	test.source_pct < least_pct
}

breach contains {
	"subject": id,
	"figures": {"odd": "the voltage at the source is none of a battery of this system", "read_v": test.at_source_v, "voltage_pct": test.source_pct},
	"limit": {"voltage_pct": most_pct},
} if {
	some id, test in input.tests
	test.kind == "voltage-drop"
	test.source_pct > most_pct
}

breach contains {
	"subject": id,
	"figures": {"odd": "the voltage at the load is none of this system", "read_v": test.at_load_v, "voltage_pct": test.load_pct},
	"limit": {"voltage_pct": most_pct},
} if {
	some id, test in input.tests
	test.kind == "voltage-drop"
	test.load_pct > most_pct
}

breach contains {"subject": id, "figures": {"odd": "found reversed, and recorded as passed"}, "limit": {}} if {
	some id, test in input.tests
	test.kind == "polarity"
	test.polarity == "reversed"
	test.result == "pass"
}
