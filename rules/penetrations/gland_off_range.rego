# METADATA
# title: Cable outside the range of its gland
# description: >-
#   A gland seals only on one round cable of the size that it is made for. On a thinner cable, or on loose wires, water runs
#   through it; a thicker one cannot be gripped and works loose.
# schemas:
#   - input: schema.facts
# custom:
#   id: penetrations/gland-off-range
#   severity: warning
#   subject: penetrations
#   applies: every hole closed by a gland
#   needs: [thin_least_mm, thin_most_mm, thick_least_mm, thick_most_mm, grip_least_mm, grip_most_mm, cables]
#   asks: [measured, seal_holes]
#   decides: [seal_kind]
#   says: "{what} {cable} in a gland for {least} to {most}"
#   remedy: "Fit a gland whose range takes the cable, one cable to each hole of its insert."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "one round cable in each gland, within the range that the gland is made for", trust: practice}
#   related: [penetrations/not-watertight]
#   since: 0.1.0
package driploop.rules.penetrations.gland_off_range

applies contains id if {
	some id, penetration in input.penetrations
	penetration.seal_kind == "gland"
}

# A computed diameter is a range. Where it straddles the end of the gland's own
# range, only a measured one can decide.
asks contains {"subject": id, "fact": "measured"} if {
	some id, penetration in input.penetrations
	penetration.thin_least_mm < penetration.grip_least_mm
}

asks contains {"subject": id, "fact": "measured"} if {
	some id, penetration in input.penetrations
	penetration.thick_most_mm > penetration.grip_most_mm
}

asks contains {"subject": id, "fact": "seal_holes"} if {
	some id, penetration in input.penetrations
	penetration.cables > 1
}

breach contains {
	"subject": id,
	"figures": {"what": "a cable of", "cable_mm": penetration.thin_most_mm, "least_mm": penetration.grip_least_mm, "most_mm": penetration.grip_most_mm},
	"limit": {"cable_mm": penetration.grip_least_mm},
} if {
	some id, penetration in input.penetrations
	penetration.thin_most_mm < penetration.grip_least_mm
}

breach contains {
	"subject": id,
	"figures": {"what": "a cable of", "cable_mm": penetration.thick_least_mm, "least_mm": penetration.grip_least_mm, "most_mm": penetration.grip_most_mm},
	"limit": {"cable_mm": penetration.grip_most_mm},
} if {
	some id, penetration in input.penetrations
	penetration.thick_least_mm > penetration.grip_most_mm
}

breach contains {
	"subject": id,
	"figures": {"what": "more cables than holes, the thickest of", "cable_mm": penetration.thick_most_mm, "least_mm": penetration.grip_least_mm, "most_mm": penetration.grip_most_mm},
	"limit": {},
} if {
	some id, penetration in input.penetrations
	penetration.cables > penetration.seal_holes
}
