# METADATA
# title: Metal clamp without a cushion
# description: >-
#   The bare edge of a metal clamp works through the insulation. On a metal hull or a bonded part the conductor is then
#   shorted, at a place that nobody sees.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/bare-metal-clamp
#   severity: caution
#   subject: segments
#   applies: every part of a route that lies in no conduit, trunking or tray
#   needs: [support_kind]
#   decides: [in]
#   says: "a metal clamp holds it with nothing between"
#   remedy: "Fit cushioned clamps, or wrap the conductor under the clamp and round the edges of the clamp."
#   mends: ["support_kind: cushioned-clamp"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "metal clamps have rounded edges, and the conductor is wrapped under them", trust: secondary}
#     - {set: workmanship, source: common-practice, clause: "", asks: "metal clamps are cushioned", trust: practice}
#   since: 0.1.0
package driploop.rules.routing.bare_metal_clamp

carried := {"conduit", "trunking", "tray"}

excludes contains id if {
	some id, segment in input.segments
	segment["in"] in carried
}

applies contains id if {
	some id, segment in input.segments
	how := segment["in"]
	not how in carried
}

breach contains {"subject": id, "figures": {"support": "metal clamp"}} if {
	some id, segment in input.segments
	segment.support_kind == "metal-clamp"
}
