# METADATA
# title: Compass turned by a current
# description: >-
#   A conductor and its return that lie apart make a magnetic field. Near the compass it turns the card whenever the load runs:
#   the boat steers off her course at night, when the lights are on.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/compass-disturbed
#   severity: caution
#   subject: conductors
#   applies: every conductor that carries current and is not twisted with its return
#   needs: [compass_turn_deg, compass_mm]
#   decides: [twisted]
#   says: "turns the compass, {compass} away, by up to {turn}; at most {limit.turn} taken as allowed"
#   remedy: "Twist it with its return, lay the two side by side, or lead them further from the compass."
#   mends: ["twisted: true"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "11.16.4.2.1", asks: "no magnetic loops near the compass; conductors there in twisted pairs; no figure", trust: secondary}
#     - {set: us-voluntary, source: physics, clause: "", asks: "the field of a pair by Biot and Savart and the turn it gives where the horizontal field is 18 µT; one degree is what a helmsman can steer, common practice without a source", trust: computed}
#   since: 0.1.0
package driploop.rules.conductors.compass_disturbed

# Common practice, no source: what a helmsman can steer.
limits := {"us-voluntary": {"turn_deg": 1}}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.role == "bonding"
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.twisted == true
}

applies contains id if {
	some id, conductor in input.conductors
	conductor.role != "bonding"
	conductor.twisted == false
}

breach contains {
	"subject": id,
	"figures": {"turn_deg": conductor.compass_turn_deg, "compass_mm": conductor.compass_mm},
	"limit": {"turn_deg": limits["us-voluntary"].turn_deg},
} if {
	some id, conductor in input.conductors
	conductor.compass_turn_deg > limits["us-voluntary"].turn_deg
}
