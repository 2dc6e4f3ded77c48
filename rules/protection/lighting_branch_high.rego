# METADATA
# title: Lighting branch on too large a device
# description: >-
#   Lamp leads and fittings are thin. Behind a large device they overheat, and burn, long before it opens.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/lighting-branch-high
#   severity: caution
#   subject: devices
#   applies: every fuse or breaker of a lighting branch, main ones aside
#   needs: [rating_a]
#   decides: [lighting]
#   says: "rated {rating} for a lighting branch, at most {limit.rating} allowed"
#   remedy: "Part the lights into branches behind devices of at most {limit.rating}."
#   mends: [rating]
#   sources:
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.380(g)", asks: "lighting branch circuits of at most 30 A", trust: read}
#     - {set: us-inspected, source: 46-cfr-129, clause: "129.380(f)", asks: "lighting branch circuits of at most 30 A", trust: read}
#   related: [protection/device-oversized]
#   since: 0.1.0
package driploop.rules.protection.lighting_branch_high

limits := {"us-inspected": {"rating_a": 30}}

excludes contains id if {
	some id, device in input.devices
	device.purpose == "main"
}

excludes contains id if {
	some id, device in input.devices
	device.lighting == false
}

applies contains id if {
	some id, device in input.devices
	device.purpose != "main"
	device.lighting == true
}

breach contains {
	"subject": id,
	"figures": {"rating_a": device.rating_a},
	"limit": {"rating_a": limits["us-inspected"].rating_a},
} if {
	some id, device in input.devices
	device.rating_a > limits["us-inspected"].rating_a
}
