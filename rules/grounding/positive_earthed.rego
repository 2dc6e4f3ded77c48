# METADATA
# title: Positive pole connected to ground
# description: >-
#   With the positive pole on ground, metal under water is the positive end of every leak and corrodes away, and equipment
#   made for negative ground has its case at the wrong pole: a wire that touches it is a short circuit.
# schemas:
#   - input: schema.facts
# custom:
#   id: grounding/positive-earthed
#   severity: warning
#   subject: vessel
#   applies: every vessel
#   needs: [earthing]
#   says: "the positive pole is connected to ground"
#   remedy: "Connect the negative pole to ground instead, or insulate both; isolate the batteries first."
#   sources:
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.673(j)", asks: "in a grounded system the negative is the grounded pole", trust: read}
#     - {set: international, source: iso-10133, clause: "4.1", asks: "two wires fully insulated, or two wires with the negative grounded", trust: secondary}
#   related: [grounding/earthed-twice]
#   since: 0.1.0
package driploop.rules.grounding.positive_earthed

breach contains {"subject": "vessel", "figures": {}, "limit": {}} if {
	input.vessel.earthing == "positive-ground"
}
