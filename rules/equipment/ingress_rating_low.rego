# METADATA
# title: Equipment less tight than its place
# description: >-
#   Water in a fitting corrodes its contacts, trips or starts it when nobody asked, and can track current to where hands or
#   vapour are.
# schemas:
#   - input: schema.facts
# custom:
#   id: equipment/ingress-rating-low
#   severity: warning
#   subject: components
#   applies: every electrical component in a wet, washed or immersed place
#   needs: [ip]
#   asks: [ip_splash, ip_jets, ip_immersion]
#   decides: [exposure]
#   says: "marked {rating} in a {exposure} place"
#   remedy: "Fit one marked {limit.rating} or better, or move it to a drier place."
#   mends: ["ip: {rating}"]
#   sources:
#     - {set: workmanship, source: iec-60529, clause: "second characteristic numeral", asks: "4 splashing, 5 and 6 jets, 7 and 8 immersion; from 7 on they are tests of their own", trust: secondary}
#     - {set: workmanship, source: common-practice, clause: "", asks: "equipment is as tight as the place that it stands in", trust: practice}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.210(b)", asks: "equipment exposed to the weather is watertight", trust: read}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.350(a)", asks: "equipment in the weather is waterproof, watertight or in a watertight housing", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.671", asks: "lights, outlets and switches in the weather are watertight", trust: read}
#   related: [penetrations/not-watertight]
#   since: 0.1.0
package driploop.rules.equipment.ingress_rating_low

limits := {
	"workmanship": {"in a wet place": {"rating": "IPX4"}, "in a washed place": {"rating": "IPX6"}, "immersed": {"rating": "IPX7"}},
	"us-inspected": {"in a wet place": {"rating": "IPX4"}, "in a washed place": {"rating": "IPX6"}, "immersed": {"rating": "IPX7"}},
}

# What each exposure asks: wet is splash and spray, washed is solid water and
# hoses, immersed is standing water.
needed := {
	"wet": {"fact": "ip_splash", "rating": "IPX4"},
	"washed": {"fact": "ip_jets", "rating": "IPX6"},
	"immersed": {"fact": "ip_immersion", "rating": "IPX7"},
}

excludes contains id if {
	some id, component in input.components
	component.electric == false
}

applies contains id if {
	some id, component in input.components
	component.electric == true
	component.exposure in {"wet", "washed", "immersed"}
}

asks contains {"subject": id, "fact": needed[component.exposure].fact} if {
	some id, component in input.components
	component.electric == true
}

# Whether it is a breach or a caution.
asks contains {"subject": id, "fact": "ip_immersion"} if {
	some id, component in input.components
	component.exposure == "washed"
	component.ip_jets == false
}

breach contains {
	"subject": id,
	"figures": {"rating": component.ip, "exposure": component.exposure},
	"limit": {"rating": needed[component.exposure].rating},
} if {
	some id, component in input.components
	component.exposure == "wet"
	component.ip_splash == false
}

# A code of 7 or 8 alone proves immersion, not jets: less bad than nothing.
breach contains {
	"subject": id,
	"severity": "caution",
	"figures": {"rating": component.ip, "exposure": component.exposure},
	"limit": {"rating": needed[component.exposure].rating},
} if {
	some id, component in input.components
	component.exposure == "washed"
	component.ip_jets == false
	component.ip_immersion == true
}

breach contains {
	"subject": id,
	"figures": {"rating": component.ip, "exposure": component.exposure},
	"limit": {"rating": needed[component.exposure].rating},
} if {
	some id, component in input.components
	component.exposure == "washed"
	component.ip_jets == false
	component.ip_immersion == false
}

breach contains {
	"subject": id,
	"figures": {"rating": component.ip, "exposure": component.exposure},
	"limit": {"rating": needed[component.exposure].rating},
} if {
	some id, component in input.components
	component.exposure == "immersed"
	component.ip_immersion == false
}
