# METADATA
# title: Conductor in bilge water
# description: >-
#   Bilge water creeps into insulation that is not made for it and eats the copper away. A conductor without a fuse that
#   leaks current there can heat, spark and eat through the metal near it.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/in-bilge-water
#   severity: warning
#   subject: segments
#   applies: every part of a route
#   needs: [below_bilge]
#   asks: [made_for_water, unfused]
#   says: "it runs below normal bilge water and {fault}"
#   remedy: "Lead it above normal bilge water. Where that cannot be, use cable made to lie in water, with a fuse at its source and no joint below the water."
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "wiring out of bilge water as far as possible; unfused conductors above it for their whole length", trust: secondary}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.673(a)", asks: "wiring as high as practicable above the bilges", trust: read}
#     - {set: us-inspected, source: 46-cfr-143, clause: "143.575(a)(3)", asks: "runs not in bilges unless adequately protected", trust: read}
#   since: 0.1.0
package driploop.rules.routing.in_bilge_water

asks contains {"subject": id, "fact": "made_for_water"} if {
	some id, segment in input.segments
	segment.below_bilge
}

asks contains {"subject": id, "set": "us-voluntary", "fact": "unfused"} if {
	some id, segment in input.segments
	segment.below_bilge
}

breach contains {"subject": id, "figures": {"fault": "its cable is not made to lie in water"}} if {
	some id, segment in input.segments
	segment.below_bilge
	segment.made_for_water == false
}

breach contains {"subject": id, "set": "us-voluntary", "figures": {"fault": "no fuse or breaker stands ahead of it"}} if {
	some id, segment in input.segments
	segment.below_bilge
	segment.unfused
}
