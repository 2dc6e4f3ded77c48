# METADATA
# title: Essential load behind a device of others
# description: >-
#   A fault in something that nobody would miss opens the device, and with it the boat loses its navigation lights, its radio,
#   its bilge pump or its alarm, at night or in trouble.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/essential-circuit-shared
#   severity: warning
#   subject: loads
#   applies: every navigation light, radio, bilge pump and alarm
#   needs: [own_device]
#   asks: [mixed]
#   decides: [purpose]
#   says: "{purpose} shares {device} with {others}"
#   remedy: "Give it a fuse or breaker of its own, fed ahead of {device}."
#   sources:
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.365(f)", asks: "navigation lights on separate switched and protected circuits", trust: read}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.365(g)", asks: "each radio on a protected circuit of its own", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.392", asks: "each radiotelephone on a protected circuit of its own", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.669", asks: "a circuit of its own from the switchboard for each radiotelephone", trust: read}
#     - {set: workmanship, source: common-practice, clause: "", asks: "navigation lights, radio, bilge pump and alarm each on a circuit of its own", trust: practice}
#   since: 0.1.0
package driploop.rules.protection.essential_circuit_shared

# The law names these; common practice adds bilge pumps and alarms.
lights := {"navigation-light", "anchor-light"}

named := {"navigation-light", "anchor-light", "radio"}

essential := {"navigation-light", "anchor-light", "radio", "bilge-pump", "alarm"}

excludes contains id if {
	some id, load in input.loads
	purpose := load.purpose
	not purpose in essential
}

excludes contains {"subject": id, "set": "us-inspected"} if {
	some id, load in input.loads
	purpose := load.purpose
	not purpose in named
}

applies contains {"subject": id, "set": "us-inspected"} if {
	some id, load in input.loads
	load.purpose in named
}

applies contains {"subject": id, "set": "workmanship"} if {
	some id, load in input.loads
	load.purpose in essential
}

# Loads of one purpose may share a device, but for radios.
asks contains {"subject": id, "fact": "mixed"} if {
	some id, load in input.loads
	load.shared_with != ""
}

breach contains {
	"subject": id,
	"set": "us-inspected",
	"clause": "28.365(f)",
	"figures": {"purpose": load.purpose, "device": load.own_device, "others": load.shared_with},
	"limit": {},
} if {
	some id, load in input.loads
	load.purpose in lights
	load.mixed == true
	load.shared_with != ""
}

breach contains {
	"subject": id,
	"set": "us-inspected",
	"figures": {"purpose": "radio", "device": load.own_device, "others": load.shared_with},
	"limit": {},
} if {
	some id, load in input.loads
	load.purpose == "radio"
	load.shared_with != ""
}

breach contains {
	"subject": id,
	"set": "workmanship",
	"severity": "caution",
	"figures": {"purpose": load.purpose, "device": load.own_device, "others": load.shared_with},
	"limit": {},
} if {
	some id, load in input.loads
	load.purpose in essential
	load.mixed == true
	load.shared_with != ""
}
