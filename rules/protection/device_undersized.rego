# METADATA
# title: Fuse or breaker below what it has to carry
# description: >-
#   It opens in normal use, often just when everything runs. Whoever has replaced it three times fits a larger one, and the
#   conductor is then protected by nothing.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/device-undersized
#   severity: caution
#   subject: devices
#   applies: every fuse and breaker
#   needs: [rating_a, load_a]
#   says: "rated {load}, and carries {limit.load} without pause"
#   remedy: "Fit a device of at least {limit.load}, and a conductor that it protects."
#   mends: [rating]
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "a device carries the continuous current of all that it feeds; one in a hot space carries less than its rating", trust: practice}
#   related: [protection/device-oversized]
#   since: 0.1.0
package driploop.rules.protection.device_undersized

breach contains {
	"subject": id,
	"figures": {"load_a": device.rating_a},
	"limit": {"load_a": device.load_a},
} if {
	some id, device in input.devices
	device.rating_a < device.load_a
}
