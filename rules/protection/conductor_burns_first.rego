# METADATA
# title: Conductor that a short circuit burns before its fuse opens
# description: >-
#   In the fraction of a second until the fuse opens, the fault current heats the conductor far above what its insulation
#   stands. The fuse saves the battery, and a conductor without insulation stays in the bundle.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/conductor-burns-first
#   severity: danger
#   subject: conductors
#   applies: every ungrounded conductor that a fuse protects, cranking feeds aside; the calibration of breakers gives no energy for a short circuit
#   needs: [let_through_up_to_a2s, withstand_a2s, size, guarded_by]
#   asks: [let_through_a2s]
#   decides: [ungrounded, behind_device, guard_fused]
#   says: "{guarded_by} may let {let_through} through in a short circuit; {size} stands {limit.let_through}"
#   remedy: "Use a larger conductor, or a smaller or quicker fuse that lets no more than {limit.let_through} through."
#   mends: [rating, size]
#   sources:
#     - {set: international, source: iec-60364-4-43, clause: "434.5.2", asks: "the energy let through stays below k²·S²", trust: secondary}
#     - {set: workmanship, source: iec-60949, clause: "", asks: "the same, with k from the temperatures of the insulation", trust: secondary}
#   related: [protection/fault-not-cleared, protection/device-oversized]
#   since: 0.1.0
package driploop.rules.protection.conductor_burns_first

excludes contains id if {
	some id, conductor in input.conductors
	conductor.duty == "cranking"
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.ungrounded == false
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.behind_device == false
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.guard_fused == false
}

applies contains id if {
	some id, conductor in input.conductors
	conductor.duty != "cranking"
	conductor.ungrounded == true
	conductor.behind_device == true
	conductor.guard_fused == true
}

# The most that it can be is enough, unless the conductor does not stand it.
asks contains {"subject": id, "fact": "let_through_a2s"} if {
	some id, conductor in input.conductors
	conductor.let_through_up_to_a2s > conductor.withstand_a2s
}

breach contains {
	"subject": id,
	"figures": {"let_through_a2s": conductor.let_through_a2s, "size": conductor.size, "guarded_by": conductor.guarded_by},
	"limit": {"let_through_a2s": conductor.withstand_a2s},
} if {
	some id, conductor in input.conductors
	conductor.let_through_up_to_a2s > conductor.withstand_a2s
	conductor.let_through_a2s > conductor.withstand_a2s
}
