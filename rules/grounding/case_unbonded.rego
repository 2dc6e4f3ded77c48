# METADATA
# title: Metal case neither grounded nor bonded
# description: >-
#   A wire that chafes through inside puts the case at battery voltage. No fuse opens, since nothing leads the current
#   back; the next tool or wet hand between the case and ground does.
# schemas:
#   - input: schema.facts
# custom:
#   id: grounding/case-unbonded
#   severity: caution
#   subject: components
#   applies: every electrical component with a metal case
#   needs: [case_bonded]
#   decides: [metal_case]
#   says: "the metal case is neither grounded nor bonded"
#   remedy: "Run a bonding conductor from the case to the common ground, or ground it to a metal hull."
#   sources:
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.372(a)", asks: "metal enclosures and frames are grounded to a metal hull, or bonded to a common ground", trust: read}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.350(e)", asks: "metal enclosures and frames are grounded", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.673(h), (i)", asks: "frames of major equipment are grounded to a metal hull, or bonded to a common ground", trust: read}
#   related: [grounding/bonding-too-small]
#   since: 0.1.0
package driploop.rules.grounding.case_unbonded

excludes contains id if {
	some id, component in input.components
	component.electric == false
}

excludes contains id if {
	some id, component in input.components
	component.metal_case == false
}

applies contains id if {
	some id, component in input.components
	component.electric == true
	component.metal_case == true
}

breach contains {"subject": id, "figures": {}, "limit": {}} if {
	some id, component in input.components
	component.metal_case == true
	component.case_bonded == false
}
