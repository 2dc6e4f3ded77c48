# METADATA
# title: Core of the panel left open in a hole
# description: >-
#   Water that reaches balsa, plywood or foam through a hole spreads between the skins, where it rots or bursts the core. The
#   fitting works loose and the panel loses its strength long before anything shows.
# schemas:
#   - input: schema.facts
# custom:
#   id: penetrations/core-unsealed
#   severity: notice
#   subject: penetrations
#   applies: every hole in a cored panel
#   needs: [core_edge, fastener_count]
#   asks: [fastener_core_sealed]
#   decides: [build]
#   says: "{core} is open to water in {where}"
#   remedy: "Take the core back around the hole, fill with thickened epoxy, or bond in a plug or tube, and drill again at size."
#   mends: ["hole.core_edge: epoxy-annulus", "fasteners.core_sealed: true"]
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "no core is exposed in a hole, nor at its fasteners", trust: practice}
#   related: [penetrations/unbedded]
#   since: 0.1.0
package driploop.rules.penetrations.core_unsealed

applies contains id if {
	some id, penetration in input.penetrations
	penetration.build == "cored"
}

asks contains {"subject": id, "fact": "fastener_core_sealed"} if {
	some id, penetration in input.penetrations
	penetration.fastener_count > 0
}

breach contains {"subject": id, "figures": {"core": "the core", "where": "the hole"}, "limit": {}} if {
	some id, penetration in input.penetrations
	penetration.core_edge == "raw"
}

breach contains {"subject": id, "figures": {"core": "the core", "where": "the fastener holes"}, "limit": {}} if {
	some id, penetration in input.penetrations
	penetration.fastener_count > 0
	penetration.fastener_core_sealed == false
}
