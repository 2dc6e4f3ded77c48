# METADATA
# title: Battery that bilge water can reach
# description: >-
#   Bilge water that reaches the terminals drains the battery and makes gas there, in sea water chlorine too. The pumps
#   and the radio stop when they are needed most.
# schemas:
#   - input: schema.facts
# custom:
#   id: sources/battery-too-low
#   severity: caution
#   subject: batteries
#   applies: every battery
#   needs: [above_bilge_mm, in_splash]
#   says: "{fault}"
#   remedy: "Raise it well above the highest water that is expected in the bilge, out of splash, and secure it again."
#   sources:
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.350(b)", asks: "as high above the bilge as practicable, out of splash and spray", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.668(d)", asks: "as high as practicable", trust: read}
#     - {set: canada, source: ca-sor-2010-91, clause: "730", asks: "a dry place above bilge water", trust: read}
#     - {set: eu, source: eu-2013-53, clause: "5.3", asks: "batteries protected from water getting in", trust: secondary}
#     - {set: international, source: iso-10133, clause: "5.1", asks: "a dry place above expected bilge water", trust: secondary}
#   since: 0.1.0
package driploop.rules.sources.battery_too_low

limits := {
	"us-inspected": {"height_mm": 0},
	"canada": {"height_mm": 0},
	"eu": {"height_mm": 0},
	"international": {"height_mm": 0},
}

breach contains {
	"subject": id,
	"set": set,
	"figures": {"fault": "its foot is not above normal bilge water", "height_mm": battery.above_bilge_mm},
	"limit": {"height_mm": limit.height_mm},
} if {
	some id, battery in input.batteries
	some set, limit in limits
	battery.above_bilge_mm <= limit.height_mm
}

breach contains {"subject": id, "figures": {"fault": "bilge water splashes on it"}} if {
	some id, battery in input.batteries
	battery.in_splash
}
