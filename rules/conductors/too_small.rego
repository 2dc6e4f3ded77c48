# METADATA
# title: Conductor below the smallest size
# description: >-
#   A thin conductor breaks first where it flexes, is pulled or is crimped, and stands no overload. It can part inside its
#   insulation, or glow there, long before anything shows outside.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/too-small
#   severity: warning
#   subject: conductors
#   applies: every conductor but bonding ones and those that each set lets go
#   needs: [area_mm2, size]
#   asks: [in_sheath, exposed_mm, current_a, length_mm]
#   says: "{size}, and {limit.size} is the smallest {where}"
#   remedy: "Replace it by a conductor of at least {limit.size}."
#   mends: [size]
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.425(d)", asks: "No. 18 AWG or larger in a multiconductor sheath; 183.425(g) exempts some", trust: read}
#     - {set: us-federal, source: 33-cfr-183, clause: "183.425(e)", asks: "No. 16 AWG or larger where installed separately; 183.425(g) exempts some", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.340(c)", asks: "No. 14 AWG for power and lighting, No. 22 for control and indicators; under 50 V, 33 CFR 183.430 may be met instead of this section (183.130(b))", trust: read}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.370(b)", asks: "No. 14 AWG for power and lighting, No. 22 for every conductor", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.672(a)", asks: "No. 14 AWG for power and lighting", trust: read}
#     - {set: us-inspected, source: 46-cfr-129, clause: "129.340(c)", asks: "No. 14 AWG for power and lighting, No. 22 for control and indicators", trust: read}
#     - {set: us-inspected, source: 46-cfr-111, clause: "111.60-4", asks: "No. 14 AWG for power and lighting, No. 18 for cable in general", trust: read}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "16 AWG, or 18 AWG in a sheath with others; short pigtails, conductors inside equipment and small electronic circuits aside", trust: secondary}
#     - {set: international, source: iso-10133, clause: "7.7", asks: "1 mm² where single and over 200 mm long, 0.75 mm² in a sheath or inside a panel", trust: secondary}
#   related: [conductors/overloaded]
#   since: 0.1.0
package driploop.rules.conductors.too_small

# Nominal areas to four digits: 18 AWG 0.823, 16 AWG 1.309, 14 AWG 2.081, 22 AWG
# 0.3255 mm².
limits := {
	"us-federal": {
		"on its own": {"clause": "183.425(e)", "area_mm2": 1.309, "size": "16 AWG"},
		"in a sheath with others": {"clause": "183.425(d)", "area_mm2": 0.823, "size": "18 AWG"},
	},
	"us-voluntary": {
		"on its own": {"clause": "", "area_mm2": 1.309, "size": "16 AWG"},
		"in a sheath with others": {"clause": "", "area_mm2": 0.823, "size": "18 AWG"},
	},
	"us-inspected": {
		"for power and lighting": {"area_mm2": 2.081, "size": "14 AWG"},
		"for control and indicators": {"area_mm2": 0.3255, "size": "22 AWG"},
	},
	"international": {
		"on its own over more than 200 mm": {"area_mm2": 1, "size": "1 mm²"},
		"in a sheath with others": {"area_mm2": 0.75, "size": "0.75 mm²"},
		"inside a panel": {"area_mm2": 0.75, "size": "0.75 mm²"},
	},
}

separate_mm := 200

# 33 CFR 183.425(g): what the section does not apply to. Electronic circuits are
# exempt below one ampere, pigtails below 7 in of exposed length.
exempt := {"communication", "navigation", "resistance", "ignition-secondary", "cranking"}

# As reported of ABYC E-11, these are exempt below one ampere only.
electronic := {"communication", "navigation", "electronic"}

least_a := 1

pigtail_mm := 177.8

applies contains {"subject": id, "set": "us-federal"} if {
	some id, conductor in input.conductors
	conductor.role != "bonding"
	not conductor.duty in exempt
	not conductor.in_housing
}

applies contains {"subject": id, "set": "us-voluntary"} if {
	some id, conductor in input.conductors
	conductor.role != "bonding"
	not conductor.in_housing
}

applies contains {"subject": id, "set": set} if {
	some id, conductor in input.conductors
	conductor.role != "bonding"
	some set in ["us-inspected", "international"]
}

# The sets that speak of a sheath and of a pigtail.
both := ["us-federal", "us-voluntary"]

# Only what is thin is looked at further and asked for how it runs.
thin contains id if {
	some id, conductor in input.conductors
	conductor.area_mm2 < limits["us-federal"]["on its own"].area_mm2
}

# Long enough, and carrying enough, to count.
long contains id if {
	some id in thin
	not input.conductors[id].pigtail
}

long contains id if {
	some id in thin
	input.conductors[id].exposed_mm >= pigtail_mm
}

carrying contains {"subject": id, "set": "us-federal"} if {
	some id in thin
	input.conductors[id].duty != "electronic"
}

carrying contains {"subject": id, "set": "us-voluntary"} if {
	some id in thin
	not input.conductors[id].duty in electronic
}

carrying contains {"subject": id, "set": set} if {
	some id in thin
	input.conductors[id].current_a >= least_a
	some set in both
}

asks contains {"subject": id, "set": set, "fact": "in_sheath"} if {
	some id in thin
	input.conductors[id].area_mm2 >= limits["us-federal"]["in a sheath with others"].area_mm2
	some set in both
}

asks contains {"subject": id, "set": set, "fact": "exposed_mm"} if {
	some id in thin
	input.conductors[id].pigtail
	some set in both
}

asks contains {"subject": id, "set": "us-federal", "fact": "current_a"} if {
	some id in thin
	input.conductors[id].duty == "electronic"
}

asks contains {"subject": id, "set": "us-voluntary", "fact": "current_a"} if {
	some id in thin
	input.conductors[id].duty in electronic
}

asks contains {"subject": id, "set": "international", "fact": "in_sheath"} if {
	some id in thin
	input.conductors[id].area_mm2 < limits.international["on its own over more than 200 mm"].area_mm2
	not input.conductors[id].in_housing
}

asks contains {"subject": id, "set": "international", "fact": "length_mm"} if {
	some id in thin
	input.conductors[id].area_mm2 < limits.international["on its own over more than 200 mm"].area_mm2
	input.conductors[id].in_sheath == false
	not input.conductors[id].in_housing
}

breach contains {
	"subject": id,
	"set": set,
	"clause": limits[set]["in a sheath with others"].clause,
	"figures": {"size": conductor.size, "area_mm2": conductor.area_mm2, "where": "in a sheath with others"},
	"limit": {"size": limits[set]["in a sheath with others"].size, "area_mm2": limits[set]["in a sheath with others"].area_mm2},
} if {
	some id, conductor in input.conductors
	id in thin
	some set in both
	conductor.area_mm2 < limits[set]["in a sheath with others"].area_mm2
	id in long
	{"subject": id, "set": set} in carrying
}

breach contains {
	"subject": id,
	"set": set,
	"clause": limits[set]["on its own"].clause,
	"figures": {"size": conductor.size, "area_mm2": conductor.area_mm2, "where": "on its own"},
	"limit": {"size": limits[set]["on its own"].size, "area_mm2": limits[set]["on its own"].area_mm2},
} if {
	some id, conductor in input.conductors
	id in thin
	some set in both
	conductor.area_mm2 < limits[set]["on its own"].area_mm2
	conductor.in_sheath == false
	id in long
	{"subject": id, "set": set} in carrying
}

breach contains {
	"subject": id,
	"set": "us-inspected",
	"figures": {"size": conductor.size, "area_mm2": conductor.area_mm2, "where": use(conductor.role, conductor.duty)},
	"limit": limits["us-inspected"][use(conductor.role, conductor.duty)],
} if {
	some id, conductor in input.conductors
	conductor.area_mm2 < limits["us-inspected"]["for power and lighting"].area_mm2
	conductor.area_mm2 < limits["us-inspected"][use(conductor.role, conductor.duty)].area_mm2
}

# Claimed signal circuits count with control and indicators.
signal := {"communication", "navigation", "electronic", "instrument"}

use(role, duty) := "for control and indicators" if {
	role == "control"
	is_string(duty)
}

use(role, duty) := "for control and indicators" if {
	role != "control"
	duty in signal
}

use(role, duty) := "for power and lighting" if {
	role != "control"
	not duty in signal
}

breach contains {
	"subject": id,
	"set": "international",
	"figures": {"size": conductor.size, "area_mm2": conductor.area_mm2, "where": "inside a panel"},
	"limit": limits.international["inside a panel"],
} if {
	some id, conductor in input.conductors
	conductor.in_housing
	conductor.area_mm2 < limits.international["inside a panel"].area_mm2
}

breach contains {
	"subject": id,
	"set": "international",
	"figures": {"size": conductor.size, "area_mm2": conductor.area_mm2, "where": "in a sheath with others"},
	"limit": limits.international["in a sheath with others"],
} if {
	some id, conductor in input.conductors
	not conductor.in_housing
	conductor.in_sheath == true
	conductor.area_mm2 < limits.international["in a sheath with others"].area_mm2
}

breach contains {
	"subject": id,
	"set": "international",
	"figures": {"size": conductor.size, "area_mm2": conductor.area_mm2, "where": "on its own over more than 200 mm"},
	"limit": limits.international["on its own over more than 200 mm"],
} if {
	some id, conductor in input.conductors
	not conductor.in_housing
	conductor.in_sheath == false
	conductor.length_mm > separate_mm
	conductor.area_mm2 < limits.international["on its own over more than 200 mm"].area_mm2
}
