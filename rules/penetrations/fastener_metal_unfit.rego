# METADATA
# title: Fasteners that make their panel corrode
# description: >-
#   Two metals in touch and damp make a battery. The baser one, most often the aluminium panel, turns to powder around the
#   fastener until the fitting pulls out.
# schemas:
#   - input: schema.facts
# custom:
#   id: penetrations/fastener-metal-unfit
#   severity: notice
#   subject: penetrations
#   applies: every fitting fastened to a metal panel
#   needs: [fastener_gap_v, fastener_pair]
#   asks: [exposure, fasteners_isolated]
#   decides: [metal_panel, fastener_count]
#   says: "{pair}: {gap} apart on the anodic index, at most {limit.gap} there, and not isolated"
#   remedy: "Use fasteners of a metal nearer to the panel's, or isolate them with sleeves, washers and compound."
#   sources:
#     - {set: workmanship, source: mil-dtl-14072f, clause: "table VI", asks: "the anodic index of touching surfaces; the plating counts", trust: secondary}
#     - {set: workmanship, source: common-practice, clause: "", asks: "at most 0.15 V apart in harsh places and 0.25 V in normal ones, or isolated; a design guide printed in many places, no standard read", trust: practice}
#   related: [penetrations/unbedded, terminations/metals-mixed]
#   since: 0.1.0
package driploop.rules.penetrations.fastener_metal_unfit

# Harsh is outdoor, salty or humid: anything but dry on a boat. Normal is without
# control of temperature or humidity.
limits := {"workmanship": {"in a dry place": {"gap_v": 0.25}, "in a damp or wetter place": {"gap_v": 0.15}}}

dry_v := limits.workmanship["in a dry place"].gap_v

wet_v := limits.workmanship["in a damp or wetter place"].gap_v

most_v := {"dry": dry_v, "damp": wet_v, "wet": wet_v, "washed": wet_v, "immersed": wet_v}

excludes contains id if {
	some id, penetration in input.penetrations
	penetration.metal_panel == false
}

excludes contains id if {
	some id, penetration in input.penetrations
	penetration.fastener_count == 0
}

applies contains id if {
	some id, penetration in input.penetrations
	penetration.metal_panel == true
	penetration.fastener_count > 0
}

asks contains {"subject": id, "fact": fact} if {
	some id, penetration in input.penetrations
	penetration.fastener_gap_v > wet_v
	some fact in ["exposure", "fasteners_isolated"]
}

breach contains {
	"subject": id,
	"figures": {"pair": penetration.fastener_pair, "gap_v": penetration.fastener_gap_v},
	"limit": {"gap_v": most_v[penetration.exposure]},
} if {
	some id, penetration in input.penetrations
	penetration.fasteners_isolated == false
	penetration.fastener_gap_v > most_v[penetration.exposure]
}
