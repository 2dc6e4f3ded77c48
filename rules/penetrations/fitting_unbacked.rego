# METADATA
# title: Loaded fitting with nothing behind it
# description: >-
#   Load on a fitting without a plate or a solid core crushes the panel under it and works the fasteners. The compound
#   lets go first, then water gets into the core, and one day the fitting comes out.
# schemas:
#   - input: schema.facts
# custom:
#   id: penetrations/fitting-unbacked
#   severity: notice
#   subject: penetrations
#   applies: every fastened fitting that carries load
#   needs: [backing]
#   decides: [load_bearing, fastener_count]
#   says: "the fitting carries load and has neither a backing plate nor a core plug"
#   remedy: "Fill the core under the fitting with thickened epoxy and put a plate behind it."
#   mends: ["backing: plate"]
#   sources:
#     - {set: workmanship, source: sealant-guides, clause: "", asks: "what carries load through a panel has a plate behind it, and a solid plug where the panel is cored", trust: secondary}
#   related: [penetrations/core-unsealed]
#   since: 0.1.0
package driploop.rules.penetrations.fitting_unbacked

excludes contains id if {
	some id, penetration in input.penetrations
	penetration.load_bearing == false
}

excludes contains id if {
	some id, penetration in input.penetrations
	penetration.fastener_count == 0
}

applies contains id if {
	some id, penetration in input.penetrations
	penetration.load_bearing == true
	penetration.fastener_count > 0
}

breach contains {"subject": id, "figures": {}, "limit": {}} if {
	some id, penetration in input.penetrations
	penetration.load_bearing == true
	penetration.fastener_count > 0
	penetration.backing == "none"
}
