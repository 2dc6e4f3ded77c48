# METADATA
# title: Cable enters an enclosure from above
# description: >-
#   Water runs down the cable and stands on the seal. However good it was when new, in time it lets some in, and there is no
#   way out: terminals corrode under water that nobody sees.
# schemas:
#   - input: schema.facts
# custom:
#   id: penetrations/enters-from-above
#   severity: caution
#   subject: penetrations
#   applies: every hole that is wet, washed or immersed on either side
#   needs: [enters_top]
#   decides: [exposure]
#   says: "the cable enters the top of an enclosure in a {exposure} place"
#   remedy: "Bring the cable in from below, or from the side behind a drip loop, and plug the old hole."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "cables enter an enclosure from below where water gets at it", trust: practice}
#   related: [penetrations/no-drip-loop, equipment/entered-from-above]
#   since: 0.1.0
package driploop.rules.penetrations.enters_from_above

wetted := {"wet", "washed", "immersed"}

excludes contains id if {
	some id, penetration in input.penetrations
	exposure := penetration.exposure
	not exposure in wetted
}

applies contains id if {
	some id, penetration in input.penetrations
	penetration.exposure in wetted
}

breach contains {"subject": id, "figures": {"exposure": penetration.exposure}, "limit": {}} if {
	some id, penetration in input.penetrations
	penetration.exposure in wetted
	penetration.enters_top == true
}
