# METADATA
# title: Battery switch too weak for its current
# description: >-
#   The contacts overheat and weld together. The switch then no longer cuts the battery off, and can set fire to the panel
#   around it.
# schemas:
#   - input: schema.facts
# custom:
#   id: sources/disconnect-underrated
#   severity: warning
#   subject: switches
#   applies: every battery and main switch
#   needs: [continuous_a, current_a, surge_a]
#   asks: [intermittent_a]
#   says: "made for {current}, {load} flows through it"
#   remedy: "Fit a switch made for at least {load}; isolate the battery before work."
#   mends: ["continuous: {current}", "intermittent: {current}"]
#   sources:
#     - {set: workmanship, source: physics, clause: "", asks: "the current that flows does not exceed what the switch is made for", trust: computed}
#     - {set: uk, source: uk-bss-2002, clause: "3.5", asks: "a master switch carries the greatest current, starting included", trust: secondary}
#   related: [sources/no-disconnect]
#   since: 0.1.0
package driploop.rules.sources.disconnect_underrated

main := {"battery-disconnect", "battery-selector", "battery-parallel", "main"}

applies contains id if {
	some id, switch in input.switches
	switch.purpose in main
}

applies contains id if {
	some id, switch in input.switches
	switch.disconnects
}

breach contains {
	"subject": id,
	"figures": {"current_a": switch.continuous_a, "load_a": switch.current_a},
	"limit": {"current_a": switch.current_a},
} if {
	some id, switch in input.switches
	switch.continuous_a < switch.current_a
}

# While starting or stalled more may flow for a short time.
asks contains {"subject": id, "fact": "intermittent_a"} if {
	some id, switch in input.switches
	switch.surge_a > switch.continuous_a
}

breach contains {
	"subject": id,
	"figures": {"current_a": switch.intermittent_a, "load_a": switch.surge_a},
	"limit": {"current_a": switch.surge_a},
} if {
	some id, switch in input.switches
	switch.surge_a > switch.continuous_a
	switch.intermittent_a < switch.surge_a
}
