# METADATA
# title: Fitting in a wet place without bedding
# description: >-
#   Without compound under the fitting and around its fasteners, water creeps along the bolts into the panel and the space
#   below. It corrodes terminals there and rots wood and core.
# schemas:
#   - input: schema.facts
# custom:
#   id: penetrations/unbedded
#   severity: notice
#   subject: penetrations
#   applies: every hole that is wet, washed or immersed on either side
#   needs: [compound, fastener_count]
#   asks: [fasteners_bedded]
#   decides: [exposure]
#   says: "{what} without bedding in a {exposure} place"
#   remedy: "Take the fitting off, chamfer the holes, bed it and each fastener, and tighten in two steps."
#   mends: ["fasteners.bedded: true", "bedding.compound: butyl"]
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "what is fastened through a wet panel is bedded, and so is each fastener", trust: practice}
#   related: [penetrations/core-unsealed]
#   since: 0.1.0
package driploop.rules.penetrations.unbedded

applies contains id if {
	some id, penetration in input.penetrations
	penetration.exposure in {"wet", "washed", "immersed"}
}

asks contains {"subject": id, "fact": "fasteners_bedded"} if {
	some id, penetration in input.penetrations
	penetration.fastener_count > 0
}

breach contains {"subject": id, "figures": {"what": "the fitting stands", "exposure": penetration.exposure}, "limit": {}} if {
	some id, penetration in input.penetrations
	penetration.compound == "none"
}

breach contains {"subject": id, "figures": {"what": "fasteners go through", "exposure": penetration.exposure}, "limit": {}} if {
	some id, penetration in input.penetrations
	penetration.fastener_count > 0
	penetration.fasteners_bedded == false
}
