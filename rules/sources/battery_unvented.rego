# METADATA
# title: Battery gas that cannot leave the boat
# description: >-
#   Hydrogen from charging gathers under the deck above. A few percent of it in air explode at the first spark, and the
#   case throws acid and splinters about.
# schemas:
#   - input: schema.facts
# custom:
#   id: sources/battery-unvented
#   severity: danger
#   subject: batteries
#   applies: every battery but lithium ones; the size of the opening where its space is not open to the air
#   needs: [vented_to]
#   asks: [open_to_air]
#   decides: [chemistry, open_to_air]
#   says: "{fault}"
#   remedy: "Vent the highest point of the box or locker to the outside, with an inlet low down, each of the area that the charging current asks for."
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.420(e)", asks: "a vent system or other means lets hydrogen leave the boat", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.350(a)", asks: "ventilation that clears the gas of charging", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.668(a)", asks: "placed so that the gas of charging disperses", trust: read}
#     - {set: canada, source: ca-sor-2010-91, clause: "730", asks: "a well ventilated place", trust: read}
#     - {set: eu, source: eu-2013-53, clause: "5.3", asks: "ventilation against explosive gas from batteries", trust: secondary}
#     - {set: international, source: iso-10133, clause: "5.1", asks: "a dry, ventilated place", trust: secondary}
#     - {set: workmanship, source: iec-62485-2, clause: "7", asks: "openings of 28 cm2 for each m3/h of air, inlet and outlet each", trust: secondary, needs: [vent_cm2, vent_needed_cm2]}
#   since: 0.1.0
package driploop.rules.sources.battery_unvented

vented := {"us-federal", "us-inspected", "canada", "eu", "international"}

excludes contains id if {
	some id, battery in input.batteries
	battery.chemistry == "lithium"
}

excludes contains {"subject": id, "set": "workmanship"} if {
	some id, battery in input.batteries
	battery.open_to_air
}

applies contains {"subject": id, "set": set} if {
	some id, battery in input.batteries
	battery.chemistry in {"flooded", "agm", "gel"}
	some set in vented
}

applies contains {"subject": id, "set": "workmanship"} if {
	some id, battery in input.batteries
	battery.chemistry in {"flooded", "agm", "gel"}
	battery.open_to_air == false
}

breach contains {"subject": id, "figures": {"fault": "its gas has no way out"}} if {
	some id, battery in input.batteries
	battery.vented_to == "none"
}

# Into a closed space is not out of the boat; how that space is aired is unknown.
breach contains {"subject": id, "set": "us-federal", "severity": "warning", "figures": {"fault": "its gas stays in a space that is not open to the air"}} if {
	some id, battery in input.batteries
	battery.vented_to == "space"
	battery.open_to_air == false
}

asks contains {"subject": id, "set": "us-federal", "fact": "open_to_air"} if {
	some id, battery in input.batteries
	battery.vented_to == "space"
}

breach contains {
	"subject": id,
	"set": "workmanship",
	"severity": "warning",
	"figures": {"fault": "its vent is too small for the gas of charging", "opening_cm2": battery.vent_cm2},
	"limit": {"opening_cm2": battery.vent_needed_cm2},
} if {
	some id, battery in input.batteries
	battery.vent_cm2 < battery.vent_needed_cm2
}
