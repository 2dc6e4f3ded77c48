# METADATA
# title: Conductor hotter than its insulation stands
# description: >-
#   Hot insulation ages, softens and lets the conductor through. A run that is short enough does no harm; one that is too long,
#   or a stalled motor that nothing cuts off in time, ruins it where nobody sees.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/overheats
#   severity: danger
#   subject: conductors
#   applies: every conductor that carries current, feeds of cranking motors aside
#   needs: [insulation_degc, temperature_degc, stall_degc, size]
#   says: "{size} reaches {insulation} {when}; its insulation is rated for {limit.insulation}"
#   remedy: "Use a larger conductor or one of a higher insulation rating, or shorten the longest run; let a stall be cut off sooner."
#   mends: [size]
#   sources:
#     - {set: workmanship, source: physics, clause: "", asks: "the steady or transient heat balance of the copper stays below the rating of its insulation, with Table 5 as the steady state", trust: computed}
#   related: [conductors/overloaded]
#   since: 0.1.0
package driploop.rules.conductors.overheats

limits := {"workmanship": {"temperature": "the rating of the insulation"}}

applies contains id if {
	some id, conductor in input.conductors
	conductor.role != "bonding"
	conductor.duty != "cranking"
}

breach contains {
	"subject": id,
	"figures": {"insulation_degc": conductor.temperature_degc, "size": conductor.size, "when": "in normal use"},
	"limit": {"insulation_degc": conductor.insulation_degc},
} if {
	some id, conductor in input.conductors
	conductor.temperature_degc > conductor.insulation_degc
}

breach contains {
	"subject": id,
	"figures": {"insulation_degc": conductor.stall_degc, "size": conductor.size, "when": "until a stalled motor is cut off"},
	"limit": {"insulation_degc": conductor.insulation_degc},
} if {
	some id, conductor in input.conductors
	conductor.stall_degc > conductor.insulation_degc
}
