# METADATA
# title: Ring that does not fit its stud
# description: >-
#   A ring with too large a hole touches its stud on a sliver and works sideways. The joint heats, and at cranking or
#   windlass currents it can glow.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/hole-not-stud
#   severity: warning
#   subject: ends
#   applies: every ring terminal and lug with a hole
#   needs: [hole, stud]
#   decides: [terminal]
#   says: "the ring is made for {hole}, the stud is {stud}"
#   remedy: "Crimp on a ring made for {stud}; a ring drilled out or a washer in place of a fitting hole will not do."
#   mends: ["hole: {hole}"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "the hole of a ring is of the same nominal size as the stud", trust: secondary}
#     - {set: workmanship, source: din-46237, clause: "", asks: "ring terminals have a hole for each stud size", trust: unverified}
#   since: 0.1.0
package driploop.rules.terminations.hole_not_stud

excludes contains id if {
	some id, end in input.ends
	kind := end.terminal
	not kind in {"ring", "solder-lug"}
}

applies contains id if {
	some id, end in input.ends
	end.terminal in {"ring", "solder-lug"}
}

breach contains {
	"subject": id,
	"figures": {"hole": end.hole, "stud": end.stud},
	"limit": {"hole": end.stud},
} if {
	some id, end in input.ends
	end.hole != end.stud
}
