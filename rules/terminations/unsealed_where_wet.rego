# METADATA
# title: Joint not sealed where it gets wet
# description: >-
#   Water creeps along the strands under the insulation. The joint turns green, heats, and the conductor rots for a long
#   way behind it, where no repair reaches.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/unsealed-where-wet
#   severity: warning
#   subject: ends
#   applies: every end of a conductor in a damp, wet, washed or immersed space
#   asks: [guarded_drips, guarded_splash, guarded_jets, guarded_immersion]
#   decides: [exposure]
#   says: "neither the joint on {on} nor its enclosure keeps out {water}"
#   remedy: "Seal the terminal with adhesive-lined heat shrink, or house the joint in an enclosure marked {limit.rating} or better."
#   mends: ["cover: heat-shrink-adhesive"]
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "joints in damp and wetter spaces are sealed by adhesive-lined heat shrink, or by an enclosure that keeps the water out", trust: practice}
#     - {set: workmanship, source: iec-60529, clause: "second characteristic numeral", asks: "1 dripping, 4 splashing, 5 and 6 jets, 7 and 8 immersion", trust: secondary}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "connections that bilge water reaches are waterproof", trust: secondary}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.350(a)", asks: "equipment in the weather is waterproof, watertight or in a watertight housing", trust: read}
#   related: [routing/connection-in-bilge, equipment/ingress-rating-low]
#   since: 0.1.0
package driploop.rules.terminations.unsealed_where_wet

limits := {
	"workmanship": {
		"in a damp place": {"rating": "IPX1"}, "in a wet place": {"rating": "IPX4"},
		"in a washed place": {"rating": "IPX6"}, "immersed": {"rating": "IPX7"},
	},
	"us-voluntary": {"immersed": {"rating": "IPX7"}},
	"us-inspected": {"in a wet place": {"rating": "IPX4"}, "in a washed place": {"rating": "IPX6"}, "immersed": {"rating": "IPX7"}},
}

# What a place asks for: damp is condensation, wet spray, washed seas and hoses,
# immersed standing water.
needed := {
	"damp": {"fact": "guarded_drips", "rating": "IPX1", "water": "dripping water"},
	"wet": {"fact": "guarded_splash", "rating": "IPX4", "water": "spray"},
	"washed": {"fact": "guarded_jets", "rating": "IPX6", "water": "jets and seas"},
	"immersed": {"fact": "guarded_immersion", "rating": "IPX7", "water": "standing water"},
}

where := {
	"workmanship": {"damp", "wet", "washed", "immersed"},
	"us-voluntary": {"immersed"},
	"us-inspected": {"wet", "washed", "immersed"},
}

excludes contains id if {
	some id, end in input.ends
	end.exposure == "dry"
}

excludes contains {"subject": id, "set": set} if {
	some id, end in input.ends
	exposure := end.exposure
	some set, exposures in where
	not exposure in exposures
}

applies contains {"subject": id, "set": set} if {
	some id, end in input.ends
	some set, exposures in where
	end.exposure in exposures
}

asks contains {"subject": id, "fact": needed[end.exposure].fact} if {
	some id, end in input.ends
}

# A code of 7 or 8 alone proves immersion, not jets: less bad than nothing.
asks contains {"subject": id, "fact": "guarded_immersion"} if {
	some id, end in input.ends
	end.exposure == "washed"
	end.guarded_jets == false
}

breach contains {
	"subject": id,
	"severity": "caution",
	"figures": {"on": end.on, "water": needed.damp.water},
	"limit": {"rating": needed.damp.rating},
} if {
	some id, end in input.ends
	end.exposure == "damp"
	end.guarded_drips == false
}

breach contains {"subject": id, "figures": {"on": end.on, "water": needed.wet.water}, "limit": {"rating": needed.wet.rating}} if {
	some id, end in input.ends
	end.exposure == "wet"
	end.guarded_splash == false
}

breach contains {
	"subject": id,
	"severity": washed(end.guarded_immersion),
	"figures": {"on": end.on, "water": needed.washed.water},
	"limit": {"rating": needed.washed.rating},
} if {
	some id, end in input.ends
	end.exposure == "washed"
	end.guarded_jets == false
}

breach contains {"subject": id, "figures": {"on": end.on, "water": needed.immersed.water}, "limit": {"rating": needed.immersed.rating}} if {
	some id, end in input.ends
	end.exposure == "immersed"
	end.guarded_immersion == false
}

washed(true) := "caution"

washed(false) := "warning"
