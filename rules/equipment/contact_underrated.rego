# METADATA
# title: Contact carries more than it is made for
# description: >-
#   An overloaded contact heats up, pits and welds. The motor then cannot be stopped, or the switch sets fire to what it is
#   mounted on. Breaking a motor, a coil or a cold lamp is harder on a contact than a heater of the same current.
# schemas:
#   - input: schema.facts
# custom:
#   id: equipment/contact-underrated
#   severity: warning
#   subject: contacts
#   applies: every contact of a switch, relay, controller or connector, battery and main switches aside
#   needs: [rating_a, current_a]
#   asks: [surge_a, intermittent_a, nominal_v, lamps_a, motors_a, coils_a, plain_a]
#   says: "made for {current}, {load} {what}"
#   remedy: "Fit one made for at least {load}, or let it work a relay that is."
#   mends: ["links[0].rating: {current}", "continuous: {current}", "intermittent: {current}"]
#   sources:
#     - {set: workmanship, source: physics, clause: "", asks: "the current that flows does not exceed what the contact is made for, starting and stall included", trust: computed}
#     - {set: workmanship, source: ac-43-13-1b, clause: "table 11-4", asks: "a switch rated at a multiple of its steady load current, by kind of load: at 12 V lamps 5, coils 2, motors 2; at 28 V lamps 8, coils 4, motors 3, heaters 2", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.220(b)", asks: "switches and fittings suit the voltage and current of their circuit", trust: read}
#   related: [sources/disconnect-underrated]
#   since: 0.1.0
package driploop.rules.equipment.contact_underrated

# AC 43.13-1B table 11-4, multiples of the steady current, by nominal voltage.
factors := {
	12: {"lamps": 5, "coils": 2, "plain": 1, "motors": 2},
	24: {"lamps": 8, "coils": 4, "plain": 2, "motors": 3},
}

# Those are judged by sources/disconnect-underrated.
main := {"battery-disconnect", "battery-selector", "battery-parallel", "main"}

applies contains id if {
	some id, contact in input.contacts
	not contact.purpose in main
}

# A plug and socket is not worked under load.
asks contains {"subject": id, "fact": "surge_a"} if {
	some id, contact in input.contacts
	contact.kind != "connector"
}

asks contains {"subject": id, "fact": "intermittent_a"} if {
	some id, contact in input.contacts
	contact.kind != "connector"
	contact.surge_a > contact.rating_a
}

# The table is one for switches that work a load; relays and controllers are made
# for theirs, and a battery switch is not worked under load.
asks contains {"subject": id, "set": "workmanship", "fact": fact} if {
	some id, contact in input.contacts
	contact.kind == "switch"
	contact.disconnects == false
	some fact in ["nominal_v", "lamps_a", "motors_a", "coils_a", "plain_a"]
}

breach contains {
	"subject": id,
	"figures": {"current_a": contact.rating_a, "load_a": contact.current_a, "what": "flows through it"},
	"limit": {"current_a": contact.current_a},
} if {
	some id, contact in input.contacts
	contact.current_a > contact.rating_a
}

breach contains {
	"subject": id,
	"figures": {"current_a": contact.intermittent_a, "load_a": contact.surge_a, "what": "flows through it while starting or stalled"},
	"limit": {"current_a": contact.surge_a},
} if {
	some id, contact in input.contacts
	contact.kind != "connector"
	contact.surge_a > contact.rating_a
	contact.surge_a > contact.intermittent_a
}

breach contains {
	"subject": id,
	"set": "workmanship",
	"clause": "table 11-4",
	"severity": "caution",
	"figures": {"current_a": contact.rating_a, "load_a": needed, "what": "is what a switch for these loads should be rated at"},
	"limit": {"current_a": needed},
} if {
	some id, contact in input.contacts
	contact.kind == "switch"
	contact.disconnects == false
	factor := factors[contact.nominal_v]
	needed := ((factor.lamps * contact.lamps_a) + (factor.motors * contact.motors_a)) + ((factor.coils * contact.coils_a) + (factor.plain * contact.plain_a))
	needed > contact.rating_a
}
