# METADATA
# title: Bonding conductor too thin
# description: >-
#   A thin bonding wire breaks or corrodes through unseen, and has too much resistance to hold what it joins at one
#   potential. A fault to the case of a fitting then stands on the case, or burns the wire before the fuse opens.
# schemas:
#   - input: schema.facts
# custom:
#   id: grounding/bonding-too-small
#   severity: caution
#   subject: conductors
#   applies: every bonding conductor
#   needs: [area_mm2, size]
#   asks: [case_least_mm2]
#   decides: [bonding]
#   says: "{size} ({area}), at least {limit.area} here"
#   remedy: "Replace it by 8 AWG (10 mm²) or more; from a case one size below the conductors that feed it will do."
#   mends: [size]
#   sources:
#     - {set: us-voluntary, source: abyc-e-2, clause: "", asks: "bonding conductors of at least 8 AWG", trust: secondary}
#     - {set: us-voluntary, source: abyc-e-11, clause: "E-9.21.2.1 as quoted", asks: "a grounding conductor from a case is at most one size below the conductors that feed it, and at least 16 AWG", trust: secondary}
#   related: [grounding/case-unbonded]
#   since: 0.1.0
package driploop.rules.grounding.bonding_too_small

# Nominal areas of 8 AWG and 16 AWG.
limits := {"us-voluntary": {
	"as a bonding conductor": {"area_mm2": 8.366},
	"from a case, and one size below its feed": {"area_mm2": 1.309},
}}

bonding_mm2 := limits["us-voluntary"]["as a bonding conductor"].area_mm2

case_mm2 := limits["us-voluntary"]["from a case, and one size below its feed"].area_mm2

excludes contains id if {
	some id, conductor in input.conductors
	conductor.bonding == false
}

applies contains id if {
	some id, conductor in input.conductors
	conductor.bonding == true
}

# Thinner than a bonding conductor, one from a case may yet be a grounding
# conductor large enough for its feed.
asks contains {"subject": id, "fact": "case_least_mm2"} if {
	some id, conductor in input.conductors
	conductor.bonding == true
	conductor.on_case == true
	conductor.area_mm2 < bonding_mm2
}

breach contains {
	"subject": id,
	"figures": {"size": conductor.size, "area_mm2": conductor.area_mm2},
	"limit": {"area_mm2": bonding_mm2},
} if {
	some id, conductor in input.conductors
	conductor.bonding == true
	conductor.on_case == false
	conductor.area_mm2 < bonding_mm2
}

breach contains {
	"subject": id,
	"figures": {"size": conductor.size, "area_mm2": conductor.area_mm2},
	"limit": {"area_mm2": min([bonding_mm2, max([case_mm2, conductor.case_least_mm2])])},
} if {
	some id, conductor in input.conductors
	conductor.bonding == true
	conductor.on_case == true
	conductor.area_mm2 < bonding_mm2
	conductor.area_mm2 < max([case_mm2, conductor.case_least_mm2])
}
