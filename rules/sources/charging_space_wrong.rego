# METADATA
# title: Batteries charged hard where people live
# description: >-
#   The harder a battery is charged, the more hydrogen it gives off, and a lithium battery that fails while charging fills
#   the space with smoke. Whoever sleeps there notices too late.
# schemas:
#   - input: schema.facts
# custom:
#   id: sources/charging-space-wrong
#   severity: warning
#   subject: chargers
#   applies: every charging source
#   needs: [power_w, spaces_known]
#   says: "{power} of charging into a battery in {place}"
#   remedy: "Move the battery to a ventilated space of its own, or charge it with less current."
#   sources:
#     - {set: us-inspected, source: 46-cfr-111, clause: "111.15-5(a), (b), (c)", asks: "above 2 kW in a battery room or deck box; from 0.2 to 2 kW never in a sleeping space; below that not in living spaces", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.354", asks: "above 2 kW in a locker, room or box of its own; else well ventilated, not in a closet", trust: read}
#     - {set: us-inspected, source: 46-cfr-129, clause: "129.356", asks: "the same as 46 CFR 183.354 for supply vessels", trust: read}
#     - {set: uk, source: uk-inland-waters-code, clause: "8.5.2", asks: "above 2 kW in a ventilated compartment of its own or on open deck", trust: read-part}
#   related: [sources/battery-unvented]
#   since: 0.1.0
package driploop.rules.sources.charging_space_wrong

limits := {
	"us-inspected": {"power_w": 2000},
	"uk": {"power_w": 2000},
}

# A space of kind battery is one that holds nothing else.
own := {"battery", "open-deck"}

breach contains {
	"subject": id,
	"set": set,
	"figures": {"power_w": charger.power_w, "place": "a space that is not its own"},
	"limit": {"power_w": limit.power_w},
} if {
	some id, charger in input.chargers
	some kind in charger.battery_spaces
	not kind in own
	some set, limit in limits
	charger.power_w > limit.power_w
}

breach contains {
	"subject": id,
	"set": "us-inspected",
	"figures": {"power_w": charger.power_w, "place": "the accommodation"},
} if {
	some id, charger in input.chargers
	some kind in charger.battery_spaces
	kind == "accommodation"
	charger.power_w <= limits["us-inspected"].power_w
}
