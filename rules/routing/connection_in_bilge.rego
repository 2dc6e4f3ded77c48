# METADATA
# title: Joint in the bilge that is not watertight
# description: >-
#   Bilge water reaches the joint sooner or later. A bilge pump then fails when it is needed, and current leaking into the
#   water eats away the fittings of the hull.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/connection-in-bilge
#   severity: warning
#   subject: ends
#   applies: every end of a conductor in a bilge space
#   needs: [guarded_immersion]
#   decides: [in_bilge]
#   says: "the joint on {on} stands in the bilge and is not watertight"
#   remedy: "Move the joint up out of the bilge, or seal it with adhesive-lined heat shrink, or house it in a box marked IPX7 or better."
#   mends: ["cover: heat-shrink-adhesive"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "connections in the bilge are waterproof", trust: secondary}
#   related: [terminations/unsealed-where-wet]
#   since: 0.1.0
package driploop.rules.routing.connection_in_bilge

excludes contains id if {
	some id, end in input.ends
	end.in_bilge == false
}

applies contains id if {
	some id, end in input.ends
	end.in_bilge
}

breach contains {"subject": id, "figures": {"on": end.on}} if {
	some id, end in input.ends
	end.in_bilge
	end.guarded_immersion == false
}
