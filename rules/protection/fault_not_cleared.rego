# METADATA
# title: Device that a short circuit at the far end does not open in time
# description: >-
#   A long, thin conductor limits its own short circuit to a current that a large device carries for minutes. The whole run
#   glows while the device waits, and nothing cuts it off.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/fault-not-cleared
#   severity: danger
#   subject: conductors
#   applies: every ungrounded conductor behind a fuse or breaker, cranking feeds aside; of a breaker only that it surely opens, since its calibration gives no time for a short circuit
#   needs: [clears, fault_least_a, guard_fused, size]
#   asks: [clear_by_s, clear_s]
#   decides: [ungrounded, behind_device]
#   says: "a bolted fault at its far end draws as little as {fault}, {what}"
#   remedy: "Use a larger conductor, or a smaller or quicker device, so that a fault at the far end opens it at once."
#   mends: [rating, size]
#   sources:
#     - {set: workmanship, source: physics, clause: "", asks: "the least fault current opens the device, by the published gates of its family", trust: computed}
#     - {set: international, source: iec-60364-4-43, clause: "434.5.2", asks: "the time to the temperature limit is reckoned for short circuits of up to 5 s", trust: secondary}
#   related: [protection/conductor-burns-first, protection/device-oversized]
#   since: 0.1.0
package driploop.rules.protection.fault_not_cleared

# IEC 60364-4-43, 434.5.2: up to 5 s.
limits := {"workmanship": {"clear_s": 5}, "international": {"clear_s": 5}}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.duty == "cranking"
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.ungrounded == false
}

# Ahead of the first device it is protection/device-too-far and unprotected that
# speak.
excludes contains id if {
	some id, conductor in input.conductors
	conductor.behind_device == false
}

applies contains id if {
	some id, conductor in input.conductors
	conductor.duty != "cranking"
	conductor.ungrounded == true
	conductor.behind_device == true
}

breach contains {
	"subject": id,
	"figures": {"size": conductor.size, "fault_a": conductor.fault_least_a, "what": "at which no device ahead of it surely opens"},
	"limit": {},
} if {
	some id, conductor in input.conductors
	conductor.clears == false
}

asks contains {"subject": id, "fact": "clear_by_s"} if {
	some id, conductor in input.conductors
	conductor.guard_fused == true
	conductor.clears == true
}

# By when is enough, unless it is too late.
asks contains {"subject": id, "fact": "clear_s"} if {
	some id, conductor in input.conductors
	conductor.guard_fused == true
	conductor.clears == true
	conductor.clear_by_s > limits.workmanship.clear_s
}

breach contains {
	"subject": id,
	"severity": "warning",
	"figures": {"size": conductor.size, "fault_a": conductor.fault_least_a, "what": "at which the fuse may take longer than the 5 s that a conductor is reckoned to stand", "clear_s": conductor.clear_s},
	"limit": {"clear_s": limits.workmanship.clear_s},
} if {
	some id, conductor in input.conductors
	conductor.guard_fused == true
	conductor.clears == true
	conductor.clear_by_s > limits.workmanship.clear_s
	conductor.clear_s > limits.workmanship.clear_s
}
