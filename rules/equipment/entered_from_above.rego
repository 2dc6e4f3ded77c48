# METADATA
# title: Cables enter equipment from above
# description: >-
#   Water runs down the cable and stands on the seal of the equipment. In time it gets in, and has no way out.
# schemas:
#   - input: schema.facts
# custom:
#   id: equipment/entered-from-above
#   severity: caution
#   subject: components
#   applies: every electrical component in a wet or washed place
#   needs: [entry]
#   asks: [ip_immersion]
#   decides: [exposure]
#   says: "its cables enter from above in a {exposure} place, and it is not proven against standing water"
#   remedy: "Turn it so that the cables enter from below, or from the side behind a drip loop."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "cables enter equipment from below where water gets at it, unless it is made to stand under water", trust: practice}
#   related: [equipment/ingress-rating-low, penetrations/enters-from-above]
#   since: 0.1.0
package driploop.rules.equipment.entered_from_above

# What is immersed is judged by its tightness alone.
wetted := {"wet", "washed"}

excludes contains id if {
	some id, component in input.components
	component.electric == false
}

excludes contains id if {
	some id, component in input.components
	exposure := component.exposure
	not exposure in wetted
}

applies contains id if {
	some id, component in input.components
	component.electric == true
	component.exposure in wetted
}

asks contains {"subject": id, "fact": "ip_immersion"} if {
	some id, component in input.components
	component.entry == "top"
}

breach contains {"subject": id, "figures": {"exposure": component.exposure}, "limit": {}} if {
	some id, component in input.components
	component.exposure in wetted
	component.entry == "top"
	component.ip_immersion == false
}
