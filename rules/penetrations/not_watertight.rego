# METADATA
# title: Hole less tight than where it stands
# description: >-
#   Water follows the cable into the boat, on to equipment and terminals. Through a watertight bulkhead it can flood the next
#   compartment and take away the flotation that the boat was built with.
# schemas:
#   - input: schema.facts
# custom:
#   id: penetrations/not-watertight
#   severity: warning
#   subject: penetrations
#   applies: every hole that is wet, washed or immersed on either side, or goes through a watertight bulkhead
#   needs: [seal_kind, ip]
#   asks: [ip_splash, ip_jets, ip_immersion]
#   decides: [exposure, watertight]
#   says: "{seal}, rating {rating}, where it has to keep out {water}"
#   remedy: "Fit a seal that is marked {limit.rating} or better, or lead the cable another way."
#   mends: ["seal.rating: {rating}"]
#   sources:
#     - {set: workmanship, source: iec-60529, clause: "second characteristic numeral", asks: "4 splashing, 5 and 6 jets, 7 and 8 immersion; from 7 on they are tests of their own", trust: secondary}
#     - {set: workmanship, source: common-practice, clause: "", asks: "a deck hole is as tight as the weather that reaches it", trust: practice}
#     - {set: us-inspected, source: 46-cfr-143, clause: "143.400(h)", asks: "holes through bulkheads stay watertight", trust: read}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.350(a)", asks: "equipment in the weather is watertight or in a watertight housing", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.671", asks: "outlets and switches in the weather are watertight", trust: read}
#   since: 0.1.0
package driploop.rules.penetrations.not_watertight

limits := {
	"workmanship": {
		"in a wet place": {"rating": "IPX4"}, "in a washed place": {"rating": "IPX6"},
		"immersed, or in a watertight bulkhead": {"rating": "IPX7"},
	},
	"us-inspected": {
		"in a wet place": {"rating": "IPX4"}, "in a washed place": {"rating": "IPX6"},
		"immersed, or in a watertight bulkhead": {"rating": "IPX7"},
	},
}

# The ratings stand for what a place asks: wet is splash and spray, washed is
# solid water and hoses, immersed and a watertight bulkhead are standing water.
needed := {
	"wet": {"fact": "ip_splash", "rating": "IPX4", "water": "spray"},
	"washed": {"fact": "ip_jets", "rating": "IPX6", "water": "jets and seas"},
	"immersed": {"fact": "ip_immersion", "rating": "IPX7", "water": "standing water"},
}

applies contains id if {
	some id, penetration in input.penetrations
	penetration.exposure in {"wet", "washed", "immersed"}
}

applies contains id if {
	some id, penetration in input.penetrations
	penetration.watertight == true
}

asks contains {"subject": id, "fact": needed[penetration.exposure].fact} if {
	some id, penetration in input.penetrations
	penetration.seal_kind != "none"
}

asks contains {"subject": id, "fact": "ip_immersion"} if {
	some id, penetration in input.penetrations
	penetration.watertight == true
	penetration.seal_kind != "none"
}

# Whether it is a breach or a caution.
asks contains {"subject": id, "fact": "ip_immersion"} if {
	some id, penetration in input.penetrations
	penetration.exposure == "washed"
	penetration.ip_jets == false
}

breach contains {
	"subject": id,
	"figures": {"seal": "nothing in the hole", "rating": "none", "water": needed[penetration.exposure].water},
	"limit": {"rating": needed[penetration.exposure].rating},
} if {
	some id, penetration in input.penetrations
	penetration.seal_kind == "none"
}

breach contains {
	"subject": id,
	"figures": {"seal": penetration.seal_kind, "rating": penetration.ip, "water": "spray"},
	"limit": {"rating": "IPX4"},
} if {
	some id, penetration in input.penetrations
	penetration.exposure == "wet"
	penetration.ip_splash == false
}

# A code of 7 or 8 alone proves immersion, not jets: less bad than nothing.
breach contains {
	"subject": id,
	"severity": "caution",
	"figures": {"seal": penetration.seal_kind, "rating": penetration.ip, "water": "jets and seas"},
	"limit": {"rating": "IPX6"},
} if {
	some id, penetration in input.penetrations
	penetration.exposure == "washed"
	penetration.ip_jets == false
	penetration.ip_immersion == true
}

breach contains {
	"subject": id,
	"figures": {"seal": penetration.seal_kind, "rating": penetration.ip, "water": "jets and seas"},
	"limit": {"rating": "IPX6"},
} if {
	some id, penetration in input.penetrations
	penetration.exposure == "washed"
	penetration.ip_jets == false
	penetration.ip_immersion == false
}

breach contains {
	"subject": id,
	"figures": {"seal": penetration.seal_kind, "rating": penetration.ip, "water": "standing water"},
	"limit": {"rating": "IPX7"},
} if {
	some id, penetration in input.penetrations
	penetration.exposure == "immersed"
	penetration.ip_immersion == false
}

breach contains {
	"subject": id,
	"figures": {"seal": penetration.seal_kind, "rating": penetration.ip, "water": "a flooded compartment"},
	"limit": {"rating": "IPX7"},
} if {
	some id, penetration in input.penetrations
	penetration.watertight == true
	penetration.ip_immersion == false
}

breach contains {
	"subject": id,
	"figures": {"seal": "nothing in the hole", "rating": "none", "water": "a flooded compartment"},
	"limit": {"rating": "IPX7"},
} if {
	some id, penetration in input.penetrations
	penetration.watertight == true
	penetration.seal_kind == "none"
}
