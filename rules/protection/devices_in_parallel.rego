# METADATA
# title: Fuses or breakers in parallel
# description: >-
#   Two devices side by side never share the current as one would think: one opens first and the other then carries all. Until
#   both have opened, the circuit stands an overload up to the sum of the two.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/devices-in-parallel
#   severity: warning
#   subject: devices
#   applies: every fuse and breaker
#   needs: []
#   says: "lies in parallel with {others}"
#   remedy: "Fit one device of the rating that the conductor allows, or part the circuit in two."
#   sources:
#     - {set: us-inspected, source: 46-cfr-111, clause: "111.50-3(d)", asks: "overcurrent devices do not lie in parallel", trust: read}
#   related: [protection/device-oversized]
#   since: 0.1.0
package driploop.rules.protection.devices_in_parallel

breach contains {"subject": id, "figures": {"others": device.parallel}, "limit": {}} if {
	some id, device in input.devices
	device.parallel != ""
}
