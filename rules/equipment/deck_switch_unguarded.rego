# METADATA
# title: Foot switch open to a stray step
# description: >-
#   A step, a dropped shackle or a loop of rope on the switch starts the winch or pump while somebody has hands in it.
# schemas:
#   - input: schema.facts
# custom:
#   id: equipment/deck-switch-unguarded
#   severity: caution
#   subject: switches
#   applies: every foot or deck switch
#   needs: [guarded]
#   decides: [deck]
#   says: "nothing guards it against being worked by accident"
#   remedy: "Fit a switch with a hinged cover or a raised rim, or a main switch that is kept open."
#   mends: ["guarded: true"]
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "foot and deck switches are guarded against accidental operation", trust: practice}
#   related: [equipment/stations-not-interlocked]
#   since: 0.1.0
package driploop.rules.equipment.deck_switch_unguarded

# Relays and controllers are worked by no foot.
excludes contains id if {
	some id, switch in input.switches
	switch.kind != "switch"
}

excludes contains id if {
	some id, switch in input.switches
	switch.deck == false
}

applies contains id if {
	some id, switch in input.switches
	switch.kind == "switch"
	switch.deck == true
}

breach contains {"subject": id, "figures": {}, "limit": {}} if {
	some id, switch in input.switches
	switch.deck == true
	switch.guarded == false
}
