# METADATA
# title: Insulation that stands too little heat
# description: >-
#   In an engine space the air alone takes up most of what low-rated insulation stands. It hardens, cracks and falls off, or
#   softens until the conductor lies bare against what is beside it.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/insulation-too-cool
#   severity: warning
#   subject: conductors
#   applies: every conductor
#   needs: [insulation_degc]
#   asks: [in_engine_space]
#   says: "insulation for {insulation}, at least {limit.insulation} asked {where}"
#   remedy: "Replace it by a conductor with insulation for at least {limit.insulation}."
#   mends: ["insulation: {insulation}"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "11.16.1.3.1, 11.16.1.3.4", asks: "by an older edition, insulation for 60 °C dry, in engine spaces for 75 °C", trust: secondary}
#   related: [conductors/not-oil-resistant]
#   since: 0.1.0
package driploop.rules.conductors.insulation_too_cool

limits := {"us-voluntary": {
	"anywhere": {"insulation_degc": 60},
	"in an engine space": {"insulation_degc": 75},
}}

asks contains {"subject": id, "fact": "in_engine_space"} if {
	some id, conductor in input.conductors
	conductor.insulation_degc >= limits["us-voluntary"].anywhere.insulation_degc
	conductor.insulation_degc < limits["us-voluntary"]["in an engine space"].insulation_degc
}

breach contains {
	"subject": id,
	"figures": {"insulation_degc": conductor.insulation_degc, "where": "anywhere"},
	"limit": {"insulation_degc": limits["us-voluntary"].anywhere.insulation_degc},
} if {
	some id, conductor in input.conductors
	conductor.insulation_degc < limits["us-voluntary"].anywhere.insulation_degc
}

breach contains {
	"subject": id,
	"figures": {"insulation_degc": conductor.insulation_degc, "where": "in an engine space"},
	"limit": {"insulation_degc": limits["us-voluntary"]["in an engine space"].insulation_degc},
} if {
	some id, conductor in input.conductors
	conductor.in_engine_space == true
	conductor.insulation_degc < limits["us-voluntary"]["in an engine space"].insulation_degc
}
