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
#   needs: [size, area_mm2, damaged_strands, broken_strands]
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

# Nominal copper area in mm² from which a row holds, and below which: a metric
# size between two rows takes the stricter.
sizes := {
	"14 AWG and smaller": [0, 3.309],
	"12 and 10 AWG": [3.309, 8.366],
	"8 AWG and larger": [8.366, 1000000],
}

breach contains {
	"subject": id,
	"figures": {"strands": end.damaged_strands, "harm": "nicked", "size": end.size},
	"limit": {"strands": row.nicked},
} if {
	some id, end in input.ends
	some gauges, bounds in sizes
	end.area_mm2 >= bounds[0]
	end.area_mm2 < bounds[1]
	row := limits.workmanship[gauges]
	end.damaged_strands > row.nicked
}

breach contains {
	"subject": id,
	"figures": {"strands": end.broken_strands, "harm": "broken", "size": end.size},
	"limit": {"strands": row.broken},
} if {
	some id, end in input.ends
	some gauges, bounds in sizes
	end.area_mm2 >= bounds[0]
	end.area_mm2 < bounds[1]
	row := limits.workmanship[gauges]
	end.broken_strands > row.broken
}
