# METADATA
# title: Device ahead that opens with the one behind it, or before
# description: >-
#   A fault in one small circuit takes the main device with it, and the whole boat goes dark and silent, pumps and navigation
#   lights included.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/no-discrimination
#   severity: caution
#   subject: devices
#   applies: every fuse or breaker behind another, where the published gates of both decide which opens first
#   needs: []
#   decides: [discrimination]
#   says: "a fault behind it opens {others} as well, or before"
#   remedy: "Use a smaller or quicker device here, or a larger or slower one ahead, with at least twice the rating between fuses of one family."
#   mends: [rating]
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "a fault opens the device nearest to it and no other", trust: practice}
#     - {set: workmanship, source: physics, clause: "", asks: "the greatest opening time of the device behind is below the least of the one ahead, at every fault current between", trust: computed}
#   related: [protection/essential-circuit-shared]
#   since: 0.1.0
package driploop.rules.protection.no_discrimination

excludes contains id if {
	some id, device in input.devices
	device.discrimination in {"alone", "either"}
}

applies contains id if {
	some id, device in input.devices
	device.discrimination in {"none", "sure"}
}

breach contains {"subject": id, "figures": {"others": device.opens_too}, "limit": {}} if {
	some id, device in input.devices
	device.discrimination == "none"
}
