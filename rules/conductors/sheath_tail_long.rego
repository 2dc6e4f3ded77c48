# METADATA
# title: Thin core too far out of its sheath
# description: >-
#   A core as thin as this holds up only in its sheath. Long tails are pulled, chafed and broken where they fan out behind
#   panels.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/sheath-tail-long
#   severity: caution
#   subject: conductors
#   applies: every core of a sheath that is too thin to run on its own; for 33 CFR 183 not what 183.425(g) exempts
#   needs: [sheath_tail_mm, size]
#   decides: [in_sheath, area_mm2]
#   says: "{size} sticks out of its sheath by {tail}, at most {limit.tail} allowed"
#   remedy: "Carry the sheath on to within {limit.tail} of the terminal, or splice on a larger conductor in an enclosure."
#   mends: ["sheath_tail: {tail}"]
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.425(f)", asks: "a No. 18 conductor sticks out of its sheath by at most 30 in", trust: read}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "at most 30 in for 18 AWG", trust: secondary}
#     - {set: international, source: iso-10133, clause: "7.7", asks: "at most 800 mm for 0.75 mm²", trust: secondary}
#   related: [conductors/too-small]
#   since: 0.1.0
package driploop.rules.conductors.sheath_tail_long

# below_mm2: what may run on its own from here on, 16 AWG and 1 mm².
limits := {
	"us-federal": {"below_mm2": 1.309, "tail_mm": 762}, # 30 in
	"us-voluntary": {"below_mm2": 1.309, "tail_mm": 762}, # 30 in
	"international": {"below_mm2": 1, "tail_mm": 800},
}

# 33 CFR 183.425(g).
exempt := {"communication", "navigation", "resistance", "ignition-secondary", "cranking"}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.in_sheath == false
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.area_mm2 >= limits["us-federal"].below_mm2
}

excludes contains {"subject": id, "set": "international"} if {
	some id, conductor in input.conductors
	conductor.area_mm2 < limits["us-federal"].below_mm2
	conductor.area_mm2 >= limits.international.below_mm2
}

excludes contains {"subject": id, "set": "us-federal"} if {
	some id, conductor in input.conductors
	conductor.duty in exempt
}

excludes contains {"subject": id, "set": set} if {
	some id, conductor in input.conductors
	conductor.in_housing
	some set in ["us-federal", "us-voluntary"]
}

thin contains {"subject": id, "set": set} if {
	some id, conductor in input.conductors
	conductor.area_mm2 < limits["us-federal"].below_mm2
	conductor.in_sheath == true
	some set, limit in limits
	conductor.area_mm2 < limit.below_mm2
}

applies contains one if {
	some one in thin
	one.set == "international"
}

applies contains one if {
	some one in thin
	one.set == "us-voluntary"
	not input.conductors[one.subject].in_housing
}

applies contains one if {
	some one in thin
	one.set == "us-federal"
	not input.conductors[one.subject].in_housing
	not input.conductors[one.subject].duty in exempt
}

breach contains {
	"subject": id,
	"set": set,
	"figures": {"size": conductor.size, "tail_mm": conductor.sheath_tail_mm},
	"limit": {"tail_mm": limit.tail_mm},
} if {
	some id, conductor in input.conductors
	some set, limit in limits
	conductor.sheath_tail_mm > limit.tail_mm
}
