# METADATA
# title: Too few strands
# description: >-
#   Coarse strands break one after the other where the boat shakes them, mostly at the edge of a terminal. The last ones carry
#   all, run hot and part.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/too-few-strands
#   severity: caution
#   subject: conductors
#   applies: every conductor of 16 AWG or larger
#   needs: [strands, size]
#   asks: [class]
#   decides: [area_mm2]
#   says: "{size} of {strands} strands, at least {limit.strands} asked {of}"
#   remedy: "Replace it by one of at least {limit.strands} strands; type 3 stands vibration best."
#   mends: ["strands: {strands}"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "stranding", asks: "at least 19 strands from 16 AWG on, 127 of 2/0 AWG type 2, 1,323 of type 3", trust: secondary}
#     - {set: us-voluntary, source: abyc-e-11, clause: "stranding, other rows", asks: "the other rows by size and type of stranding", trust: unverified}
#   related: [conductors/not-stranded-copper]
#   since: 0.1.0
package driploop.rules.conductors.too_few_strands

limits := {"us-voluntary": {
	"from 16 AWG on": {"clause": "stranding", "strands": 19},
	"2/0 AWG of type 2": {"clause": "stranding", "strands": 127},
	"2/0 AWG of type 3": {"clause": "stranding", "strands": 1323},
	"other sizes by type": {"clause": "stranding, other rows", "strands": "a table from memory, unverified: a notice at most"},
}}

# From 16 AWG, 1.309 mm², on.
least_mm2 := 1.309

least := limits["us-voluntary"]["from 16 AWG on"].strands

# Least number of strands by size for type 2 and type 3. Reported: 19 of type 2
# from 16 to 8 AWG, and both of 2/0 AWG. All else is from memory, unverified, and
# no more than a notice.
rows := {
	"16 AWG": {"type-2": 19, "type-3": 26},
	"14 AWG": {"type-2": 19, "type-3": 41},
	"12 AWG": {"type-2": 19, "type-3": 65},
	"10 AWG": {"type-2": 19, "type-3": 105},
	"8 AWG": {"type-2": 19, "type-3": 168},
	"6 AWG": {"type-2": 37, "type-3": 266},
	"4 AWG": {"type-2": 49, "type-3": 420},
	"2 AWG": {"type-2": 127, "type-3": 665},
	"1 AWG": {"type-2": 127, "type-3": 836},
	"1/0 AWG": {"type-2": 127, "type-3": 1064},
	"2/0 AWG": {"type-2": 127, "type-3": 1323},
	"3/0 AWG": {"type-2": 259, "type-3": 1666},
	"4/0 AWG": {"type-2": 418, "type-3": 2107},
}

# The row that is reported beside the general 19.
reported := "2/0 AWG"

excludes contains id if {
	some id, conductor in input.conductors
	conductor.area_mm2 < least_mm2
}

applies contains id if {
	some id, conductor in input.conductors
	conductor.area_mm2 >= least_mm2
}

# The type decides only where the strands would not do for the finest.
asks contains {"subject": id, "fact": "class"} if {
	some id, conductor in input.conductors
	conductor.strands >= least
	conductor.strands < rows[conductor.size]["type-3"]
}

breach contains {
	"subject": id,
	"clause": "stranding",
	"figures": {"size": conductor.size, "strands": conductor.strands, "of": "of any conductor"},
	"limit": {"strands": least},
} if {
	some id, conductor in input.conductors
	conductor.strands < least
}

breach contains {
	"subject": id,
	"clause": "stranding",
	"figures": {"size": conductor.size, "strands": conductor.strands, "of": concat(" ", ["of", conductor.class])},
	"limit": {"strands": rows[conductor.size][conductor.class]},
} if {
	some id, conductor in input.conductors
	conductor.size == reported
	conductor.strands >= least
	conductor.strands < rows[conductor.size][conductor.class]
}

breach contains {
	"subject": id,
	"clause": "stranding, other rows",
	"severity": "notice",
	"figures": {"size": conductor.size, "strands": conductor.strands, "of": concat(" ", ["of", conductor.class])},
	"limit": {"strands": rows[conductor.size][conductor.class]},
} if {
	some id, conductor in input.conductors
	conductor.size != reported
	conductor.strands >= least
	conductor.strands < rows[conductor.size][conductor.class]
}
