# METADATA
# title: Too much voltage lost on the way
# description: >-
#   A lamp goes dim, a pump or blower runs slow, a motor stalls and a radio falls silent, first of all when the battery is low
#   and they are needed most. What the load lacks heats the conductors.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/drop-excessive
#   severity: warning
#   subject: loads
#   applies: every load
#   needs: [drop_pct, drop_v, nominal_v]
#   asks: [drop_class, purpose]
#   says: "{lost} of {nominal} is lost out and back, {drop}; at most {limit.drop} allowed {for}"
#   remedy: "Use larger conductors on the way to {subject} and back, or a shorter way, until no more than {limit.drop} is lost."
#   mends: [size]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "11.14.2.6", asks: "3 % for panel feeders, bilge blowers, electronic equipment, navigation lights and what else needs it, 10 % for the rest, bilge pumps among them; by the formula with K = 10.75", trust: secondary}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.340(p)", asks: "10 % at the load", trust: read}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.370(b)", asks: "10 % at the load", trust: read}
#     - {set: us-inspected, source: 46-cfr-129, clause: "129.340(o)", asks: "10 % at the load", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.672(c)", asks: "10 % at the load", trust: read}
#     - {set: international, source: iso-10133, clause: "4.7, 4.8, critical circuits", asks: "typically 3 % for navigation lights, bilge blowers, bilge pumps and what else is vital to safety", trust: secondary}
#     - {set: international, source: iso-10133, clause: "4.7, 4.8, other circuits", asks: "10 % in general", trust: unverified}
#   related: [conductors/overloaded]
#   since: 0.1.0
package driploop.rules.conductors.drop_excessive

limits := {
	"us-voluntary": {
		"critical": {"clause": "11.14.2.6", "drop_pct": 3},
		"other": {"clause": "11.14.2.6", "drop_pct": 10},
	},
	"us-inspected": {"any": {"clause": "", "drop_pct": 10}},
	"international": {
		"critical": {"clause": "4.7, 4.8, critical circuits", "drop_pct": 3},
		"other": {"clause": "4.7, 4.8, other circuits", "drop_pct": 10},
	},
}

# Loads that each set itself names among the critical ones: they are so whatever
# class the record gives them. An answer of the issuing body (on E-11 of July 2015)
# leaves bilge pumps out, unlike the blowers; ISO names both.
critical := {
	"us-voluntary": {"navigation-light", "anchor-light", "blower", "radio", "navigation"},
	"international": {"navigation-light", "anchor-light", "blower", "bilge-pump"},
}

# Between the two limits, purpose and class decide; a purpose that is named in a
# set needs no class.
asks contains {"subject": id, "set": set, "fact": fact} if {
	some id, load in input.loads
	some set, _ in critical
	load.drop_pct > limits[set].critical.drop_pct
	load.drop_pct <= limits[set].other.drop_pct
	some fact in ["drop_class", "purpose"]
}

breach contains {
	"subject": id,
	"set": set,
	"clause": limits[set].critical.clause,
	"figures": {"drop_pct": load.drop_pct, "lost_v": load.drop_v, "nominal_v": load.nominal_v, "for": concat("", ["for what the practice names as critical (", load.purpose, ")"])},
	"limit": {"drop_pct": limits[set].critical.drop_pct},
} if {
	some id, load in input.loads
	some set, purposes in critical
	load.purpose in purposes
	load.drop_pct > limits[set].critical.drop_pct
}

breach contains {
	"subject": id,
	"set": "us-voluntary",
	"clause": limits["us-voluntary"].critical.clause,
	"figures": {"drop_pct": load.drop_pct, "lost_v": load.drop_v, "nominal_v": load.nominal_v, "for": "for electronic equipment"},
	"limit": {"drop_pct": limits["us-voluntary"].critical.drop_pct},
} if {
	some id, load in input.loads
	load.kind == "electronics"
	load.drop_pct > limits["us-voluntary"].critical.drop_pct
}

breach contains {
	"subject": id,
	"set": set,
	"clause": limits[set].critical.clause,
	"figures": {"drop_pct": load.drop_pct, "lost_v": load.drop_v, "nominal_v": load.nominal_v, "for": "for what is recorded as critical"},
	"limit": {"drop_pct": limits[set].critical.drop_pct},
} if {
	some id, load in input.loads
	load.drop_class == "critical"
	some set, _ in critical
	load.drop_pct > limits[set].critical.drop_pct
}

breach contains {
	"subject": id,
	"set": "us-voluntary",
	"clause": limits["us-voluntary"].other.clause,
	"figures": {"drop_pct": load.drop_pct, "lost_v": load.drop_v, "nominal_v": load.nominal_v, "for": "for any load"},
	"limit": {"drop_pct": limits["us-voluntary"].other.drop_pct},
} if {
	some id, load in input.loads
	load.drop_pct > limits["us-voluntary"].other.drop_pct
}

# The general limit of ISO 10133 is known from memory only.
breach contains {
	"subject": id,
	"set": "international",
	"clause": limits.international.other.clause,
	"severity": "caution",
	"figures": {"drop_pct": load.drop_pct, "lost_v": load.drop_v, "nominal_v": load.nominal_v, "for": "for any load"},
	"limit": {"drop_pct": limits.international.other.drop_pct},
} if {
	some id, load in input.loads
	load.drop_pct > limits.international.other.drop_pct
}

breach contains {
	"subject": id,
	"set": "us-inspected",
	"figures": {"drop_pct": load.drop_pct, "lost_v": load.drop_v, "nominal_v": load.nominal_v, "for": "for any load"},
	"limit": {"drop_pct": limits["us-inspected"].any.drop_pct},
} if {
	some id, load in input.loads
	load.drop_pct > limits["us-inspected"].any.drop_pct
}
