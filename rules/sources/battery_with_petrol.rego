# METADATA
# title: Battery in one space with a petrol tank or engine
# description: >-
#   Petrol vapour gathers low in the space, where the battery stands. A loose cable or a dropped tool is enough to set it
#   off.
# schemas:
#   - input: schema.facts
# custom:
#   id: sources/battery-with-petrol
#   severity: warning
#   subject: batteries
#   applies: every battery in a space with a petrol tank or engine
#   needs: [isolation_means]
#   decides: [petrol_near]
#   says: "a petrol tank or engine stands in its space, and nothing screens it off"
#   remedy: "Move the battery to another space, or enclose it in a box or cage that screens it off; air the space before work."
#   sources:
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.668(b), (c)", asks: "not in the compartment of a petrol tank or petrol engine, else effectively screened by a cage", trust: read}
#   related: [ignition/spark-near-petrol]
#   since: 0.1.0
package driploop.rules.sources.battery_with_petrol

excludes contains id if {
	some id, battery in input.batteries
	battery.petrol_near == false
}

applies contains id if {
	some id, battery in input.batteries
	battery.petrol_near
}

breach contains {"subject": id} if {
	some id, battery in input.batteries
	battery.petrol_near
	battery.isolation_means in {"none", "distance", "lower-with-means"}
}
