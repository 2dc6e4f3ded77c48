# METADATA
# title: Load draws more than its nameplate says
# description: >-
#   A motor that draws too much is jammed, worn or fed too low a voltage; a circuit that draws too much has something on it
#   that nobody wrote down. Either way its wire and fuse were chosen for less.
# schemas:
#   - input: schema.facts
# custom:
#   id: measurements/current-above-nameplate
#   severity: caution
#   subject: tests
#   applies: every test of a load in which its current was read
#   needs: [current_a, rated_a, rated_pct]
#   decides: [kind]
#   says: "{current} was measured, the nameplate says {rated}"
#   remedy: "Look for what else is on the circuit, for a jam or a bad bearing, and at the voltage at the load; then correct the record or the load."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "a load draws at most a fifth more than its nameplate says; a resistive one draws that much more at charging voltage", trust: practice}
#   related: [measurements/drop-above-computed, conductors/overloaded]
#   since: 0.1.0
package driploop.rules.measurements.current_above_nameplate

# No source: a resistive load of 12 V draws a fifth more at the 14.4 V of a
# battery on charge.
limits := {"workmanship": {"share_pct": 120}}

with_current := {"current", "voltage-drop"}

excludes contains id if {
	some id, test in input.tests
	test.about in {"conductor", "penetration"}
}

excludes contains id if {
	some id, test in input.tests
	kind := test.kind
	not kind in with_current
}

applies contains id if {
	some id, test in input.tests
	test.kind in with_current
	test.about in {"load", "nothing"}
}

breach contains {
	"subject": id,
	"figures": {"current_a": test.current_a, "rated_a": test.rated_a, "share_pct": test.rated_pct},
	"limit": limits.workmanship,
} if {
	some id, test in input.tests
	test.kind in with_current
	test.rated_pct > limits.workmanship.share_pct
}
