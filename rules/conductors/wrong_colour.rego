# METADATA
# title: Colour that means something else
# description: >-
#   Whoever works on the boat next goes by the colours. A conductor in the colour of the other pole is cut, joined or fused as
#   what it is not: a short circuit, a shock to equipment, or a protection on the wrong side.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/wrong-colour
#   severity: caution
#   subject: conductors
#   applies: every positive, negative and bonding conductor; control conductors follow their maker's colours
#   needs: [colour]
#   asks: [for_blower]
#   decides: [known_role]
#   says: "{colour} on a {role} conductor; the table has {wanted}"
#   remedy: "Replace it by one in the right colour, or mark both ends lastingly in it: {wanted}."
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "the colours of direct-current conductors under 50 V by what they serve", trust: secondary}
#   related: [conductors/bonding-colour-misused]
#   since: 0.1.0
package driploop.rules.conductors.wrong_colour

# ABYC E-11, colour tables, as four republications agree: red for mains; for
# circuits orange, brown, purple, grey, dark and light blue, pink, tan, blue or
# green with a stripe; yellow with red for the starter's solenoid; brown with
# yellow, or yellow, for bilge blowers; black or yellow for returns, black with
# yellow by one of them; green or green with yellow for bonding. Violet stands for
# purple, plain blue for either blue.
positive := {"red", "orange", "brown", "purple", "violet", "grey", "blue", "dark-blue", "light-blue", "pink", "tan", "yellow/red"}

negative := {"black", "yellow", "black/yellow"}

bonding := {"green", "green/yellow", "bare"}

# Striped conductors of a circuit go by their main colour.
main := {"red/", "orange/", "brown/", "purple/", "violet/", "grey/", "blue/", "dark-blue/", "light-blue/", "pink/", "tan/", "green/"}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.known_role == "control"
}

applies contains id if {
	some id, conductor in input.conductors
	conductor.known_role != "control"
}

striped(colour) if {
	some begins in main
	startswith(colour, begins)
}

breach contains {
	"subject": id,
	"figures": {"colour": conductor.colour, "role": "positive", "wanted": "red, or the colour of what it serves, never one of the negative's"},
	"limit": {},
} if {
	some id, conductor in input.conductors
	conductor.known_role == "positive"
	colour := conductor.colour
	not colour in positive
	not striped(colour)
	not colour in {"yellow", "green"}
}

# Yellow is printed for bilge blowers beside brown with yellow.
asks contains {"subject": id, "fact": "for_blower"} if {
	some id, conductor in input.conductors
	conductor.known_role == "positive"
	conductor.colour == "yellow"
}

breach contains {
	"subject": id,
	"figures": {"colour": "yellow", "role": "positive", "wanted": "it for a bilge blower and for returns only"},
	"limit": {},
} if {
	some id, conductor in input.conductors
	conductor.known_role == "positive"
	conductor.colour == "yellow"
	conductor.for_blower == false
}

# Green is judged by conductors/bonding-colour-misused.
breach contains {
	"subject": id,
	"figures": {"colour": conductor.colour, "role": "negative", "wanted": "black or yellow"},
	"limit": {},
} if {
	some id, conductor in input.conductors
	conductor.known_role == "negative"
	colour := conductor.colour
	not colour in negative
	not colour in {"green", "green/yellow"}
}

breach contains {
	"subject": id,
	"figures": {"colour": conductor.colour, "role": "bonding", "wanted": "green, or green with yellow"},
	"limit": {},
} if {
	some id, conductor in input.conductors
	conductor.known_role == "bonding"
	colour := conductor.colour
	not colour in bonding
}
