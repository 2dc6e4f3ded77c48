# METADATA
# title: Battery terminals that metal can touch
# description: >-
#   A tool or a can that falls across the terminals takes the whole current of the battery. Metal melts and flies, hands
#   and eyes are burned, and the gas over the battery can explode.
# schemas:
#   - input: schema.facts
# custom:
#   id: sources/battery-terminals-bare
#   severity: danger
#   subject: batteries
#   applies: every battery
#   asks: [ungrounded_covered, terminals_covered]
#   says: "metal can touch {terminals}"
#   remedy: "Fit boots over the terminals, or a box with a lid; cover one terminal before work on the other."
#   mends: ["terminals_covered: true", "ungrounded_covered: true"]
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.420(b)", asks: "metal objects cannot touch the ungrounded terminals", trust: read}
#     - {set: international, source: iso-10133, clause: "5.4", asks: "metal objects cannot touch any terminal", trust: secondary}
#     - {set: us-voluntary, source: abyc-e-10, clause: "", asks: "terminals covered or boxed", trust: secondary}
#   related: [terminations/live-stud-bare]
#   since: 0.1.0
package driploop.rules.sources.battery_terminals_bare

# The federal rule speaks of ungrounded terminals, ISO of all.
asked := {
	"us-federal": "ungrounded_covered",
	"us-voluntary": "ungrounded_covered",
	"international": "terminals_covered",
}

asks contains {"subject": id, "set": set, "fact": fact} if {
	some id, _ in input.batteries
	some set, fact in asked
}

breach contains {"subject": id, "set": set, "figures": {"terminals": "its ungrounded terminals"}} if {
	some id, battery in input.batteries
	battery.ungrounded_covered == false
	some set in ["us-federal", "us-voluntary"]
}

breach contains {"subject": id, "set": "international", "figures": {"terminals": "its terminals, not all of which are covered"}} if {
	some id, battery in input.batteries
	battery.terminals_covered == false
}
