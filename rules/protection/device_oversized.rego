# METADATA
# title: Fuse or breaker too large for its conductor
# description: >-
#   A device protects the conductor behind it only if it opens before the insulation is harmed. One that is too large lets the
#   conductor glow for minutes, or for good, on an overload that it does not see.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/device-oversized
#   severity: danger
#   subject: conductors
#   applies: every ungrounded conductor behind a fuse or breaker; not cranking feeds, nor what 33 CFR 183.455(e) exempts from its limit
#   needs: [guard_a, guarded_by, size]
#   asks: [exposed_mm, length_mm, tap_table5_pct, tap_allowable_pct]
#   decides: [ungrounded, bare]
#   says: "{guarded_by} of {guard} protects {size}, at most {limit.guard} allowed"
#   remedy: "Fit a device of at most {limit.guard}, if that carries the load, or a larger conductor; isolate before work."
#   mends: [rating, size]
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.455(c)(1)", asks: "under 50 V a rating of at most 150 % of the Table 5 value, taken without note 1", trust: read, needs: [table5_a, guard_table5_pct]}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.380(d)", asks: "a rating matched to the conductor's capacity, or the next larger standard size up to 150 %", trust: read, needs: [allowable_a, guard_allowable_pct]}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.365(c)", asks: "protection to the capacity of the conductor", trust: read, needs: [allowable_a, guard_allowable_pct]}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.673(f)", asks: "protection to the capacity of the conductor", trust: read, needs: [allowable_a, guard_allowable_pct]}
#     - {set: us-inspected, source: 46-cfr-111, clause: "111.50-3(c)", asks: "the next larger device at most, and not above 150 % of the capacity", trust: read, needs: [allowable_a, guard_allowable_pct]}
#     - {set: us-inspected, source: 46-cfr-129, clause: "129.380(g)", asks: "the next larger device only if it is below 150 % of the capacity", trust: read, needs: [allowable_a, guard_allowable_pct]}
#     - {set: uk, source: uk-small-vessel-code, clause: "8.2.4", asks: "a rating not above the conductor's rated capacity", trust: read-part, needs: [allowable_a, guard_allowable_pct]}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "a rating not above the conductor's capacity, or the next larger standard size up to 150 %", trust: secondary, needs: [allowable_a, guard_allowable_pct]}
#   related: [protection/device-too-far, conductors/overloaded]
#   since: 0.1.0
package driploop.rules.protection.device_oversized

# In per cent of what the conductor may carry: for us-federal the Table 5 value as
# it stands, else the value corrected for where it runs.
limits := {
	"us-federal": {"share_pct": 150},
	"us-inspected": {"share_pct": 150},
	"uk": {"share_pct": 100},
	"us-voluntary": {"share_pct": 150},
}

# Ratings that fuses and breakers are commonly sold in, A. Common practice, no
# source: what is found by them is a caution.
standard := [
	1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125,
	150, 175, 200, 225, 250, 300, 350, 400, 450, 500, 600,
]

# 33 CFR 183.455(e) exempts these from its limit, and pigtails with less than 7 in
# exposed. Every set exempts cranking feeds.
exempt := {"ignition-secondary", "resistance"}

pigtail_mm := 177.8

# 33 CFR 183.455(b)(1) and, as reported, ABYC E-11: a device may stand this far along
# the conductor from where that takes its power, 7 in. A link as short is its own
# device's to protect.
tap_mm := 177.8

# The device ahead is what has to fit.
ahead contains {"subject": id, "set": set} if {
	some id, conductor in input.conductors
	conductor.tap == false
	some set, _ in limits
}

ahead contains {"subject": id, "set": set} if {
	some id, conductor in input.conductors
	conductor.tap == true
	some set in {"us-inspected", "uk"}
}

ahead contains {"subject": id, "set": set} if {
	some id, conductor in input.conductors
	conductor.tap == true
	conductor.length_mm > tap_mm
	some set in {"us-federal", "us-voluntary"}
}

ahead contains {"subject": id, "set": "us-federal"} if {
	some id, conductor in input.conductors
	conductor.tap == true
	conductor.tap_table5_pct > limits["us-federal"].share_pct
}

ahead contains {"subject": id, "set": "us-voluntary"} if {
	some id, conductor in input.conductors
	conductor.tap == true
	conductor.tap_allowable_pct > 100
}

asks contains {"subject": id, "set": "us-federal", "fact": fact} if {
	some id, conductor in input.conductors
	conductor.tap == true
	some fact in ["length_mm", "tap_table5_pct"]
}

asks contains {"subject": id, "set": "us-voluntary", "fact": fact} if {
	some id, conductor in input.conductors
	conductor.tap == true
	some fact in ["length_mm", "tap_allowable_pct"]
}

# Without any device it is protection/unprotected that speaks.
excludes contains id if {
	some id, conductor in input.conductors
	conductor.bare == true
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.ungrounded == false
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.duty == "cranking"
}

excludes contains id if {
	some id, conductor in input.conductors
	not conductor.fed
}

excludes contains {"subject": id, "set": "us-federal"} if {
	some id, conductor in input.conductors
	conductor.duty in exempt
}

concerned contains id if {
	some id, conductor in input.conductors
	conductor.ungrounded == true
	conductor.bare == false
}

applies contains {"subject": id, "set": set} if {
	some id in concerned
	some set in {"us-inspected", "uk", "us-voluntary"}
}

applies contains {"subject": id, "set": "us-federal"} if {
	some id in concerned
	not input.conductors[id].duty in exempt
	not input.conductors[id].pigtail
}

applies contains {"subject": id, "set": "us-federal"} if {
	some id in concerned
	not input.conductors[id].duty in exempt
	input.conductors[id].exposed_mm >= pigtail_mm
}

asks contains {"subject": id, "set": "us-federal", "fact": "exposed_mm"} if {
	some id, conductor in input.conductors
	conductor.pigtail
	not conductor.duty in exempt
}

breach contains {
	"subject": id,
	"set": "us-federal",
	"figures": {"guard_a": conductor.guard_a, "guarded_by": conductor.guarded_by, "size": conductor.size, "share_pct": conductor.guard_table5_pct},
	"limit": {"guard_a": conductor.table5_a * 1.5, "share_pct": limits["us-federal"].share_pct},
} if {
	some id, conductor in input.conductors
	conductor.guard_table5_pct > limits["us-federal"].share_pct
	{"subject": id, "set": "us-federal"} in ahead
}

breach contains {
	"subject": id,
	"set": "uk",
	"figures": {"guard_a": conductor.guard_a, "guarded_by": conductor.guarded_by, "size": conductor.size, "share_pct": conductor.guard_allowable_pct},
	"limit": {"guard_a": conductor.allowable_a, "share_pct": limits.uk.share_pct},
} if {
	some id, conductor in input.conductors
	conductor.guard_allowable_pct > limits.uk.share_pct
}

breach contains {
	"subject": id,
	"set": set,
	"figures": {"guard_a": conductor.guard_a, "guarded_by": conductor.guarded_by, "size": conductor.size, "share_pct": conductor.guard_allowable_pct},
	"limit": {"guard_a": most(conductor.allowable_a), "share_pct": limits[set].share_pct},
} if {
	some id, conductor in input.conductors
	some set in stepped
	conductor.guard_allowable_pct > limits[set].share_pct
	{"subject": id, "set": set} in ahead
}

# Within 150 %, and yet a smaller standard size would do.
breach contains {
	"subject": id,
	"set": set,
	"severity": "caution",
	"figures": {"guard_a": conductor.guard_a, "guarded_by": conductor.guarded_by, "size": conductor.size, "share_pct": conductor.guard_allowable_pct},
	"limit": {"guard_a": most(conductor.allowable_a), "share_pct": limits[set].share_pct},
} if {
	some id, conductor in input.conductors
	conductor.guard_allowable_pct > 100
	conductor.guard_a > most(conductor.allowable_a)
	some set in stepped
	conductor.guard_allowable_pct <= limits[set].share_pct
	{"subject": id, "set": set} in ahead
}

# These allow the capacity, or the next larger standard size up to 150 %.
stepped := {"us-inspected", "us-voluntary"}

most(allowable_a) := min({next, allowable_a * 1.5}) if {
	next := min([size | some size in standard; size >= allowable_a])
}

most(allowable_a) := allowable_a * 1.5 if allowable_a > max(standard)
