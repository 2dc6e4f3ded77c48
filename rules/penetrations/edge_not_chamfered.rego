# METADATA
# title: Hole in gelcoat left sharp
# description: >-
#   A sharp edge chips and cracks the gelcoat around the hole when the fastener is driven, and leaves the compound no room
#   to form a ring. Cracks spread, and water finds its way along them.
# schemas:
#   - input: schema.facts
# custom:
#   id: penetrations/edge-not-chamfered
#   severity: notice
#   subject: penetrations
#   applies: every hole in a panel with gelcoat
#   needs: [edge, fastener_count]
#   asks: [countersunk]
#   decides: [gelcoat]
#   says: "{what} not chamfered"
#   remedy: "Chamfer each hole just wider than its fastener, down through the gelcoat, and bed it again."
#   mends: ["hole.edge: chamfered", "fasteners.countersunk: true"]
#   sources:
#     - {set: workmanship, source: sealant-guides, clause: "", asks: "the edge of a hole through gelcoat is chamfered or countersunk before anything is driven into it", trust: secondary}
#   related: [penetrations/unbedded, penetrations/core-unsealed]
#   since: 0.1.0
package driploop.rules.penetrations.edge_not_chamfered

applies contains id if {
	some id, penetration in input.penetrations
	penetration.gelcoat == true
}

excludes contains id if {
	some id, penetration in input.penetrations
	penetration.gelcoat == false
}

asks contains {"subject": id, "fact": "countersunk"} if {
	some id, penetration in input.penetrations
	penetration.fastener_count > 0
}

breach contains {"subject": id, "figures": {"what": "the edge of the hole is"}, "limit": {}} if {
	some id, penetration in input.penetrations
	penetration.edge == "raw"
}

breach contains {"subject": id, "figures": {"what": "the holes of the fasteners are"}, "limit": {}} if {
	some id, penetration in input.penetrations
	penetration.fastener_count > 0
	penetration.countersunk == false
}
