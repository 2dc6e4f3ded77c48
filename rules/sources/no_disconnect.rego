# METADATA
# title: Battery that no switch can cut off
# description: >-
#   When a cable burns or a motor runs on, nobody can stop it. Pulling a cable off a battery under load draws an arc in
#   the face of whoever tries.
# schemas:
#   - input: schema.facts
# custom:
#   id: sources/no-disconnect
#   severity: warning
#   subject: batteries
#   applies: every battery; under the voluntary standard above 800 A cold cranking, or 100 Ah where that is not known
#   needs: [switched]
#   asks: [cranking_a, capacity_ah, switch_accessible]
#   says: "{what}"
#   remedy: "Fit a battery switch close to the battery that opens its ungrounded conductors and carries their whole current, in reach without tools."
#   sources:
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.380(i)", asks: "an accessible emergency switch in the ungrounded main conductor from a battery, as close to it as practicable", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.668(i)", asks: "an emergency switch as close as practicable to the battery that opens all ungrounded conductors", trust: read}
#     - {set: us-inspected, source: 46-cfr-129, clause: "129.380(i)", asks: "an emergency switch in each ungrounded main conductor from a battery", trust: read}
#     - {set: uk, source: uk-bss-2002, clause: "3.5", asks: "readily accessible master switches that disconnect the whole system, starting circuits included, as close to the battery as possible", trust: secondary}
#     - {set: us-voluntary, source: abyc-e-11, clause: "11.6.1.2.1 as quoted", asks: "a switch for each battery or bank above 800 CCA, or 100 Ah where CCA is not known", trust: secondary}
#   since: 0.1.0
package driploop.rules.sources.no_disconnect

limits := {"us-voluntary": {"by cold cranking current": {"size_a": 800}, "where that is not known": {"size_ah": 100}}}

none := "no switch opens all of its ungrounded conductors"

# The sets that ask for a switch whatever the size of the battery, and for one that
# can be reached.
always := ["us-inspected", "uk"]

breach contains {"subject": id, "set": set, "figures": {"what": none}, "limit": {}} if {
	some id, battery in input.batteries
	battery.switched == false
	some set in always
}

asks contains {"subject": id, "set": set, "fact": "switch_accessible"} if {
	some id, battery in input.batteries
	battery.switched == true
	some set in always
}

breach contains {"subject": id, "set": set, "figures": {"what": "its switch cannot be reached at once"}, "limit": {}} if {
	some id, battery in input.batteries
	battery.switched == true
	battery.switch_accessible == false
	some set in always
}

breach contains {
	"subject": id,
	"set": "us-voluntary",
	"figures": {"what": none, "size_a": battery.cranking_a},
	"limit": {"size_a": limits["us-voluntary"]["by cold cranking current"].size_a},
} if {
	some id, battery in input.batteries
	battery.switched == false
	battery.cranking_a > limits["us-voluntary"]["by cold cranking current"].size_a
}

breach contains {
	"subject": id,
	"set": "us-voluntary",
	"figures": {"what": none, "size_ah": battery.capacity_ah},
	"limit": {"size_ah": limits["us-voluntary"]["where that is not known"].size_ah},
} if {
	some id, battery in input.batteries
	battery.switched == false
	battery.cranking_given == false
	battery.capacity_ah > limits["us-voluntary"]["where that is not known"].size_ah
}

# A small capacity does not make up for a cranking current that is missing.
asks contains {"subject": id, "set": "us-voluntary", "fact": "cranking_a"} if {
	some id, battery in input.batteries
	battery.switched == false
}

asks contains {"subject": id, "set": "us-voluntary", "fact": "capacity_ah"} if {
	some id, battery in input.batteries
	battery.switched == false
	battery.cranking_given == false
}
