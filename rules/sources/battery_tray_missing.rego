# METADATA
# title: Flooded battery without a tray that stands acid
# description: >-
#   Spilled acid eats into wood, laminate bonds, aluminium and wiring below the battery, and burns whoever cleans it up
#   without knowing.
# schemas:
#   - input: schema.facts
# custom:
#   id: sources/battery-tray-missing
#   severity: caution
#   subject: batteries
#   applies: every flooded battery
#   needs: [tray]
#   decides: [chemistry]
#   says: "it stands in {tray}"
#   remedy: "Stand it in a tray or box of electrolyte-resistant plastic that holds what it can spill."
#   mends: ["tray: liquid-tight"]
#   sources:
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.350(e)", asks: "trays of or lined with material that resists the electrolyte", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.668(f)", asks: "a tray of lead or other material that resists the electrolyte", trust: read}
#     - {set: us-voluntary, source: abyc-e-10, clause: "", asks: "what a battery is mounted in and on withstands the electrolyte", trust: secondary}
#   since: 0.1.0
package driploop.rules.sources.battery_tray_missing

poor := {"none": "no tray", "plain": "a tray that the acid attacks"}

excludes contains id if {
	some id, battery in input.batteries
	battery.chemistry != "flooded"
}

applies contains id if {
	some id, battery in input.batteries
	battery.chemistry == "flooded"
}

breach contains {"subject": id, "figures": {"tray": poor[battery.tray]}} if {
	some id, battery in input.batteries
}
