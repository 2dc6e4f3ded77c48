# METADATA
# title: Sealant in a place that it does not stand
# description: >-
#   Silicone and butyl let go under water, fuel softens polyurethane and butyl, and the acid of some silicones corrodes
#   copper. The seal fails where it matters most, or eats the contacts beside it.
# schemas:
#   - input: schema.facts
# custom:
#   id: penetrations/sealant-out-of-place
#   severity: notice
#   subject: penetrations
#   applies: every fitting bedded in silicone, butyl or polyurethane
#   asks: [under_water, place, seal_kind]
#   decides: [compound]
#   says: "bedded in {compound} {where}"
#   remedy: "Clean both faces and bed the fitting again in {instead}."
#   sources:
#     - {set: workmanship, source: sealant-guides, clause: "", asks: "silicone and butyl above water only; no polyurethane or butyl where fuel reaches it; neutral silicone at electrical parts", trust: secondary}
#   related: [penetrations/sealant-attacks-panel, penetrations/unbedded]
#   since: 0.1.0
package driploop.rules.penetrations.sealant_out_of_place

# What general boating literature gives each family. Silicone above water and
# polyurethane and fuel: reported by several. Butyl, and acid cure beside copper:
# from memory, unverified.
above_water_only := {"silicone-acid", "silicone-neutral", "butyl"}

not_for_fuel := {"polyurethane", "butyl"}

limited := above_water_only | not_for_fuel

excludes contains id if {
	some id, penetration in input.penetrations
	compound := penetration.compound
	not compound in limited
}

applies contains id if {
	some id, penetration in input.penetrations
	penetration.compound in limited
}

asks contains {"subject": id, "fact": "under_water"} if {
	some id, penetration in input.penetrations
	penetration.compound in above_water_only
}

asks contains {"subject": id, "fact": "place"} if {
	some id, penetration in input.penetrations
	penetration.compound in {"polyurethane", "butyl", "silicone-acid"}
}

asks contains {"subject": id, "fact": "seal_kind"} if {
	some id, penetration in input.penetrations
	penetration.compound == "silicone-acid"
}

breach contains {
	"subject": id,
	"figures": {"compound": penetration.compound, "where": "below water", "instead": "polysulphide or polyurethane"},
	"limit": {},
} if {
	some id, penetration in input.penetrations
	penetration.compound in above_water_only
	penetration.under_water == true
}

breach contains {
	"subject": id,
	"figures": {"compound": penetration.compound, "where": "where fuel reaches it", "instead": "a compound that its maker allows for fuel"},
	"limit": {},
} if {
	some id, penetration in input.penetrations
	penetration.compound in not_for_fuel
	penetration.place == "fuel"
}

breach contains {
	"subject": id,
	"figures": {"compound": penetration.compound, "where": "at electrical parts", "instead": "silicone of neutral cure"},
	"limit": {},
} if {
	some id, penetration in input.penetrations
	penetration.compound == "silicone-acid"
	penetration.place == "electrical"
}

# A deck plug or socket is bedded around its own contacts.
breach contains {
	"subject": id,
	"figures": {"compound": penetration.compound, "where": "around a connector", "instead": "silicone of neutral cure"},
	"limit": {},
} if {
	some id, penetration in input.penetrations
	penetration.compound == "silicone-acid"
	penetration.seal_kind == "connector"
}
