# METADATA
# title: Device too large for its motor
# description: >-
#   A jammed or overloaded motor draws a few times its rated current. A device well above that rating lets it cook until its
#   windings or its leads burn.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/motor-device-high
#   severity: warning
#   subject: devices
#   applies: every fuse or breaker that is the last one before a motor and feeds nothing else
#   needs: [rating_a, motor_a, motor_pct]
#   decides: [motor]
#   says: "rated {rating} for a motor of {motor_current}, {share} of it, at most {limit.share} allowed"
#   remedy: "Fit a device of at most {limit.rating} that stands the motor's starting current, such as a delayed one."
#   mends: [rating]
#   sources:
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.673(g)", asks: "a device of their own for motor conductors, at most 125 % of the motor's full-load current", trust: read}
#   related: [protection/device-oversized]
#   since: 0.1.0
package driploop.rules.protection.motor_device_high

limits := {"us-inspected": {"share_pct": 125}}

excludes contains id if {
	some id, device in input.devices
	device.motor == false
}

applies contains id if {
	some id, device in input.devices
	device.motor == true
}

breach contains {
	"subject": id,
	"figures": {"rating_a": device.rating_a, "motor_current_a": device.motor_a, "share_pct": device.motor_pct},
	"limit": {"share_pct": limits["us-inspected"].share_pct, "rating_a": device.motor_a * 1.25},
} if {
	some id, device in input.devices
	device.motor_pct > limits["us-inspected"].share_pct
}
