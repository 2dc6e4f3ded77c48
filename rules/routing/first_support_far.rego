# METADATA
# title: Battery cable hanging from its terminal
# description: >-
#   A heavy cable that hangs from the battery post pulls on it in every sea. The post loosens and sparks, the case cracks,
#   and a cable that comes off can lie across the other pole.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/first-support-far
#   severity: caution
#   subject: conductors
#   applies: every conductor that lands on a battery
#   needs: [first_support_most_mm]
#   asks: [first_support_mm]
#   says: "the first support is {support} from the terminal, at most {limit.support} allowed"
#   remedy: "Clamp the cable within {limit.support} of the battery terminal; cover the terminals before work."
#   mends: ["first_support: {support}"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "battery cables supported within 36 in of the terminal", trust: secondary}
#     - {set: international, source: iso-10133, clause: "7.4", asks: "the first support of battery conductors within 1 m of the terminal", trust: secondary}
#   related: [routing/support-too-far]
#   since: 0.1.0
package driploop.rules.routing.first_support_far

limits := {
	"us-voluntary": {"support_mm": 914.4}, # 36 in
	"international": {"support_mm": 1000},
}

applies contains id if {
	some id, conductor in input.conductors
	conductor.on_battery
}

# A conductor shorter than that hangs from both its ends.
asks contains {"subject": id, "set": set, "fact": "first_support_mm"} if {
	some id, conductor in input.conductors
	some set, limit in limits
	conductor.first_support_most_mm > limit.support_mm
}

breach contains {
	"subject": id,
	"set": set,
	"figures": {"support_mm": conductor.first_support_mm},
	"limit": {"support_mm": limit.support_mm},
} if {
	some id, conductor in input.conductors
	some set, limit in limits
	conductor.first_support_most_mm > limit.support_mm
	conductor.first_support_mm > limit.support_mm
}
