# METADATA
# title: Conductor chafing on the edge of a hole
# description: >-
#   Every movement of the boat rubs the insulation on the bare edge of the hole. Once it is through, the conductor can short
#   to metal, to wet laminate or to its neighbour, and start a fire where nobody looks.
# schemas:
#   - input: schema.facts
# custom:
#   id: penetrations/edge-unprotected
#   severity: warning
#   subject: penetrations
#   applies: every hole through which a conductor passes
#   needs: [seal_kind]
#   asks: [edge]
#   decides: [passing]
#   says: "conductors pass a hole with a {edge} edge and {seal} around them"
#   remedy: "Fit a grommet, bush, gland or edge strip, so that no conductor can touch the edge."
#   mends: ["hole.edge: grommet", "seal.kind: grommet"]
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.445(a)", asks: "conductors passing a rigid surface are protected from abrasion", trust: read}
#     - {set: workmanship, source: ac-43-13-1b, clause: "11-96c", asks: "holes in bulkheads and frames are lined, sleeved or fitted with a grommet", trust: read}
#     - {set: workmanship, source: ac-43-13-1b, clause: "11-115", asks: "a grommet where the wires are not clamped clear of the hole", trust: read}
#   since: 0.1.0
package driploop.rules.penetrations.edge_unprotected

applies contains id if {
	some id, penetration in input.penetrations
	penetration.passing > 0
}

# What closes the hole can itself keep the conductor off the edge; compound does
# so only on an edge that has been broken.
asks contains {"subject": id, "fact": "edge"} if {
	some id, penetration in input.penetrations
	penetration.seal_kind in {"none", "compound"}
}

breach contains {
	"subject": id,
	"figures": {"edge": penetration.edge, "seal": "nothing"},
	"limit": {},
} if {
	some id, penetration in input.penetrations
	penetration.seal_kind == "none"
	penetration.edge in {"raw", "chamfered", "rounded"}
}

breach contains {
	"subject": id,
	"figures": {"edge": penetration.edge, "seal": "only compound"},
	"limit": {},
} if {
	some id, penetration in input.penetrations
	penetration.seal_kind == "compound"
	penetration.edge == "raw"
}
