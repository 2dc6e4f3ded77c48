# METADATA
# title: Unlike batteries in one bank
# description: >-
#   In parallel the weaker one drains the stronger; in series it is overcharged and driven into reverse. It gasses,
#   overheats and can burst.
# schemas:
#   - input: schema.facts
# custom:
#   id: sources/battery-units-mixed
#   severity: caution
#   subject: batteries
#   applies: every bank of two batteries or more
#   needs: [units_match]
#   decides: [units]
#   says: "its {units} batteries are not all of one type, make and age"
#   remedy: "Replace the bank as a whole, by batteries of one type, make and age."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "the batteries of a bank are of one type, make and age", trust: practice}
#   since: 0.1.0
package driploop.rules.sources.battery_units_mixed

excludes contains id if {
	some id, battery in input.batteries
	battery.units < 2
}

applies contains id if {
	some id, battery in input.batteries
	battery.units >= 2
}

breach contains {"subject": id, "figures": {"units": battery.units}} if {
	some id, battery in input.batteries
	battery.units >= 2
	battery.units_match == false
}
