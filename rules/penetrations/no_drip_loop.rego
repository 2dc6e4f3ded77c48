# METADATA
# title: Cable leads water to a hole
# description: >-
#   Water runs down a cable until it meets its lowest point. If that is the hole, or equipment below it, the water ends up in
#   the seal, the enclosure or the terminals.
# schemas:
#   - input: schema.facts
# custom:
#   id: penetrations/no-drip-loop
#   severity: caution
#   subject: penetrations
#   applies: every hole that is damp, wet, washed or immersed on either side and through which a conductor passes
#   needs: [loop_side]
#   asks: [cable_falls, equipment_below]
#   decides: [exposure, passing]
#   says: "the cable runs down {where} without a loop"
#   remedy: "Lead the cable below the hole and up again, so that water drips off at the lowest point."
#   mends: ["drip_loop.side: from", "drip_loop.side: to", "drip_loop.side: both"]
#   sources:
#     - {set: workmanship, source: ac-43-13-1b, clause: "11-96x", asks: "a trap or drip loop where wires run down to a connector, block, panel or box", trust: read}
#     - {set: workmanship, source: tm-1-1500-204-23-4, clause: "inspection list (24)", asks: "a trap or drip loop where wires run down to a connector, panel or box", trust: read}
#     - {set: workmanship, source: common-practice, clause: "", asks: "a drip loop before each hole to the weather", trust: practice}
#   related: [penetrations/not-watertight]
#   since: 0.1.0
package driploop.rules.penetrations.no_drip_loop

applies contains id if {
	some id, penetration in input.penetrations
	penetration.exposure in {"damp", "wet", "washed", "immersed"}
	penetration.passing > 0
}

asks contains {"subject": id, "fact": fact} if {
	some id, penetration in input.penetrations
	penetration.loop_side == "none"
	some fact in ["cable_falls", "equipment_below"]
}

breach contains {"subject": id, "figures": {"where": "to the hole"}, "limit": {}} if {
	some id, penetration in input.penetrations
	penetration.loop_side == "none"
	penetration.cable_falls == true
}

breach contains {"subject": id, "figures": {"where": "on to equipment below the hole"}, "limit": {}} if {
	some id, penetration in input.penetrations
	penetration.loop_side == "none"
	penetration.equipment_below == true
}
