# METADATA
# title: Too many terminals on one stud
# description: >-
#   Terminals stacked high no longer press on each other evenly. The joint loosens, heats, and takes every circuit on the stud
#   with it.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/stud-crowded
#   severity: warning
#   subject: studs
#   applies: every stud, screw or post that a conductor lands on
#   says: "{landed} terminals on one stud, at most {limit.landed} allowed"
#   remedy: "Spread them over several studs joined by a bus bar, {limit.landed} to a stud; isolate before work."
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "at most four terminals on one stud", trust: secondary}
#     - {set: international, source: iso-10133, clause: "", asks: "at most four terminals on one stud", trust: unverified}
#     - {set: workmanship, source: ac-43-13-1b, clause: "11-174b", asks: "more than four terminals are joined by a bus across two or more studs", trust: read}
#   since: 0.1.0
package driploop.rules.terminations.stud_crowded

limits := {
	"us-voluntary": {"landed": 4},
	"international": {"landed": 4},
	"workmanship": {"landed": 4},
}

breach contains {
	"subject": id,
	"set": set,
	"figures": {"landed": stud.landed},
	"limit": {"landed": limit.landed},
} if {
	some id, stud in input.studs
	some set, limit in limits
	stud.landed > limit.landed
}
