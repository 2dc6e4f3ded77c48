# METADATA
# title: Lithium battery without a management system
# description: >-
#   Nothing then stops a cell from being overcharged, drained or charged in the cold. A cell that fails so burns without
#   air and gives off poisonous, explosive smoke.
# schemas:
#   - input: schema.facts
# custom:
#   id: sources/lithium-unmanaged
#   severity: warning
#   subject: batteries
#   applies: every lithium battery
#   needs: [managed]
#   decides: [chemistry]
#   says: "no management system guards it"
#   remedy: "Use a battery with a management system that opens its circuit, with an alarm ahead of that, set up as its maker says."
#   sources:
#     - {set: international, source: iso-ts-23625, clause: "", asks: "a management system guards lithium-ion batteries", trust: secondary}
#     - {set: us-voluntary, source: abyc-e-13, clause: "", asks: "a management system, with an alarm before it disconnects", trust: unverified}
#   since: 0.1.0
package driploop.rules.sources.lithium_unmanaged

excludes contains id if {
	some id, battery in input.batteries
	battery.chemistry != "lithium"
}

applies contains id if {
	some id, battery in input.batteries
	battery.chemistry == "lithium"
}

breach contains {"subject": id} if {
	some id, battery in input.batteries
	battery.chemistry == "lithium"
	battery.managed == false
}
