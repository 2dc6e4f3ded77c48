# METADATA
# title: Steering that an overload switches off
# description: >-
#   The steering motor works hardest in the moment when it is needed most. A device that opens on overload then takes the
#   steering away without warning.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/steering-overload-trip
#   severity: warning
#   subject: devices
#   applies: every fuse or breaker that feeds steering alone
#   needs: []
#   asks: [curve]
#   decides: [steering]
#   says: "this {kind} opens on overload, and the steering is lost with it"
#   remedy: "Fit a breaker that opens on a short circuit alone, and an alarm that can be heard and seen for overload."
#   sources:
#     - {set: us-inspected, source: 46-cfr-58, clause: "58.25-55(a)", asks: "a breaker of instantaneous trip, at 300 to 375 % of the motor's full-load current, for a direct-current steering motor", trust: read}
#     - {set: us-inspected, source: 46-cfr-58, clause: "58.25-55(b), (c)", asks: "no other device in the feeder, and an overload alarm instead of a trip", trust: read}
#     - {set: uk, source: uk-small-vessel-code, clause: "8.2.5", asks: "an overload alarm instead of overload protection where the loss of the circuit loses steering; autopilot motors aside", trust: read-part}
#   related: [protection/essential-circuit-shared]
#   since: 0.1.0
package driploop.rules.protection.steering_overload_trip

excludes contains id if {
	some id, device in input.devices
	device.steering == false
}

applies contains id if {
	some id, device in input.devices
	device.steering == true
}

asks contains {"subject": id, "fact": "curve"} if {
	some id, device in input.devices
	device.kind == "breaker"
}

# A fuse of any kind opens on overload.
breach contains {"subject": id, "figures": {"kind": "fuse"}, "limit": {}} if {
	some id, device in input.devices
	device.kind == "fuse"
}

breach contains {"subject": id, "figures": {"kind": concat(" ", [device.curve, "breaker"])}, "limit": {}} if {
	some id, device in input.devices
	device.kind == "breaker"
	device.curve != "magnetic"
}
