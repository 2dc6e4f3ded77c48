# METADATA
# title: Plain copper where it is damp
# description: >-
#   Salt air creeps up between the strands and turns plain copper black and green for a hand's breadth under the insulation. The
#   joint heats up, and a new terminal finds no sound copper to grip.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/untinned
#   severity: notice
#   subject: conductors
#   applies: every conductor through a damp, wet, washed or immersed space
#   needs: [tinned]
#   decides: [wettest]
#   says: "plain copper strands in a {exposure} space"
#   remedy: "Use tinned cable when it is next replaced; until then seal its ends with adhesive heat-shrink."
#   mends: ["tinned: true"]
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "tinned strands wherever it is damp", trust: practice}
#   since: 0.1.0
package driploop.rules.conductors.untinned

excludes contains id if {
	some id, conductor in input.conductors
	conductor.wettest == "dry"
}

applies contains id if {
	some id, conductor in input.conductors
	conductor.wettest != "dry"
}

breach contains {"subject": id, "figures": {"exposure": conductor.wettest}, "limit": {}} if {
	some id, conductor in input.conductors
	conductor.tinned == false
}
