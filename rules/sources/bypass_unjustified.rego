# METADATA
# title: Circuit past the battery switch without need
# description: >-
#   With the battery switched off, this circuit is still live: for whoever works on it, for water that gets in, and for
#   the battery that it drains.
# schemas:
#   - input: schema.facts
# custom:
#   id: sources/bypass-unjustified
#   severity: warning
#   subject: loads
#   applies: every load fed by a battery that has a disconnect switch
#   asks: [purpose]
#   decides: [behind_battery]
#   says: "no battery or main switch cuts it off; its purpose is {purpose}"
#   remedy: "Feed it from behind the battery switch, or through a battery switch of its own."
#   sources:
#     - {set: uk, source: uk-bss-2002, clause: "3.5", asks: "past the master switch only bilge pumps, security alarms, fire pumps and navigation equipment with memories, if protected", trust: secondary}
#     - {set: us-voluntary, source: abyc-e-11, clause: "11.6.1.2.1 as quoted", asks: "past the battery switch only bilge pumps, detectors, blowers and other safety gear, charging equipment and memories", trust: secondary}
#   related: [sources/no-disconnect]
#   since: 0.1.0
package driploop.rules.sources.bypass_unjustified

# Navigation equipment, radios and instruments stand for what keeps a memory.
allowed := {
	"uk": {"bilge-pump", "alarm", "navigation"},
	"us-voluntary": {"bilge-pump", "alarm", "blower", "navigation", "radio", "instrument"},
}

excludes contains id if {
	some id, load in input.loads
	load.behind_battery == false
}

applies contains id if {
	some id, load in input.loads
	load.behind_battery
}

asks contains {"subject": id, "fact": "purpose"} if {
	some id, load in input.loads
	load.isolated == false
}

breach contains {"subject": id, "set": set, "figures": {"purpose": load.purpose}} if {
	some id, load in input.loads
	load.isolated == false
	purpose := load.purpose
	some set, purposes in allowed
	not purpose in purposes
}
