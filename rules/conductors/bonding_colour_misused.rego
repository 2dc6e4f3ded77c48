# METADATA
# title: Bonding colour on a conductor that carries current
# description: >-
#   Green and green with yellow tell that a conductor can be touched and joined to any case. On one that carries current,
#   somebody will bond a case or a hull fitting to it: it becomes live, corrodes, or shorts the battery.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/bonding-colour-misused
#   severity: warning
#   subject: conductors
#   applies: every positive, negative and control conductor
#   needs: [colour]
#   says: "{colour} on a {role} conductor"
#   remedy: "Replace it by one in a colour of its own; green and green with yellow are for bonding alone."
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "green, or green with yellow, for grounding and bonding conductors", trust: secondary}
#     - {set: international, source: iso-13297, clause: "", asks: "green, or green with yellow, for equipotential bonding", trust: unverified}
#   related: [conductors/wrong-colour]
#   since: 0.1.0
package driploop.rules.conductors.bonding_colour_misused

applies contains id if {
	some id, conductor in input.conductors
	conductor.role != "bonding"
}

breach contains {
	"subject": id,
	"figures": {"colour": conductor.colour, "role": conductor.role},
	"limit": {},
} if {
	some id, conductor in input.conductors
	conductor.colour in {"green", "green/yellow"}
}
