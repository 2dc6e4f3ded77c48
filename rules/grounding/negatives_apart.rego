# METADATA
# title: Negatives that do not meet
# description: >-
#   Where the negatives of batteries, sources and loads do not come together at one main point, return current looks for
#   another way: through the engine, a shaft, a fuel line or a bonding wire, with heat and corrosion where nobody expects it.
# schemas:
#   - input: schema.facts
# custom:
#   id: grounding/negatives-apart
#   severity: warning
#   subject: vessel
#   applies: every vessel
#   needs: [negative_groups]
#   says: "the negatives form {groups} separate groups; apart stand {stray}"
#   remedy: "Bring every negative to the main negative bus, and that to the battery."
#   sources:
#     - {set: international, source: iso-10133, clause: "4.1", asks: "the negatives meet at the engine negative terminal or at a main grounding bus", trust: secondary}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "returns lead to a negative bus and so to one main negative point", trust: unverified}
#     - {set: workmanship, source: common-practice, clause: "", asks: "every negative leads to one common point", trust: practice}
#   since: 0.1.0
package driploop.rules.grounding.negatives_apart

breach contains {
	"subject": "vessel",
	"figures": {"groups": input.vessel.negative_groups, "stray": concat(", ", input.vessel.stray_negatives)},
	"limit": {"groups": 1},
} if {
	input.vessel.negative_groups > 1
}
