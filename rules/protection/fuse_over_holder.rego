# METADATA
# title: Fuse too large for its holder
# description: >-
#   The holder's springs and leads run hotter than they are made for. They lose their grip, heat up the more, and melt the
#   holder around a fuse that never opens.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/fuse-over-holder
#   severity: warning
#   subject: devices
#   applies: every fuse
#   needs: [rating_a, holder_a]
#   says: "{rating} in a holder for {limit.rating}"
#   remedy: "Fit a holder for at least {rating}, or a fuse of at most {limit.rating} if that carries the load."
#   mends: [rating]
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "a fuse is rated no higher than its holder", trust: practice}
#   related: [protection/device-oversized]
#   since: 0.1.0
package driploop.rules.protection.fuse_over_holder

applies contains id if {
	some id, device in input.devices
	device.kind == "fuse"
}

breach contains {
	"subject": id,
	"figures": {"rating_a": device.rating_a},
	"limit": {"rating_a": device.holder_a},
} if {
	some id, device in input.devices
	device.rating_a > device.holder_a
}
