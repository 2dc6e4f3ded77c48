# METADATA
# title: Strands nicked or broken when stripped
# description: >-
#   What is left of the conductor at the terminal carries all of the current. It heats there, and bending breaks the
#   nicked strands one after another.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/strands-damaged
#   severity: caution
#   subject: ends
#   applies: every end of a conductor
#   needs: [size, gauge, damaged_strands, broken_strands]
#   says: "{strands} strands {harm} in {size}, at most {limit.strands} allowed"
#   remedy: "Cut the end off and strip it again with a stripper set to the size."
#   sources:
#     - {set: workmanship, source: ac-43-13-1b, clause: "table 11-13", asks: "copper 24 to 14: 2 nicked, 0 broken; 12 and 10: 4 and 0; 8 and larger: 6 and 6", trust: read}
#   since: 0.1.0
package driploop.rules.terminations.strands_damaged

# AC 43.13-1B table 11-13.
limits := {"workmanship": {
	"14 AWG and smaller": {"nicked": 2, "broken": 0},
	"12 and 10 AWG": {"nicked": 4, "broken": 0},
	"8 AWG and larger": {"nicked": 6, "broken": 6},
}}

# By the gauge with no more copper, so that a metric size between two rows takes
# the stricter.
rows := {
	"26 AWG": "14 AWG and smaller", "24 AWG": "14 AWG and smaller", "22 AWG": "14 AWG and smaller",
	"20 AWG": "14 AWG and smaller", "18 AWG": "14 AWG and smaller", "16 AWG": "14 AWG and smaller",
	"14 AWG": "14 AWG and smaller", "finer": "14 AWG and smaller",
	"12 AWG": "12 and 10 AWG", "10 AWG": "12 and 10 AWG",
}

row(gauge) := limits.workmanship[rows[gauge]]

row(gauge) := limits.workmanship["8 AWG and larger"] if not rows[gauge]

breach contains {
	"subject": id,
	"figures": {"strands": end.damaged_strands, "harm": "nicked", "size": end.size},
	"limit": {"strands": limit.nicked},
} if {
	some id, end in input.ends
	limit := row(end.gauge)
	end.damaged_strands > limit.nicked
}

breach contains {
	"subject": id,
	"figures": {"strands": end.broken_strands, "harm": "broken", "size": end.size},
	"limit": {"strands": limit.broken},
} if {
	some id, end in input.ends
	limit := row(end.gauge)
	end.broken_strands > limit.broken
}
