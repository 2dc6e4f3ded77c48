# METADATA
# title: Loom that feeds a fire
# description: >-
#   Loom that goes on burning carries a fire along the conductors from one space to the next, with smoke that nobody can
#   breathe.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/loom-burns
#   severity: caution
#   subject: segments
#   applies: every part of a route that lies in loom
#   needs: [loom_rating]
#   decides: [in]
#   says: "the loom is {loom}, no better"
#   remedy: "Replace it by loom marked UL 94 V-2 or better (V-1, V-0)."
#   mends: ["loom_rating: ul-94-v-0"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "loom is self-extinguishing, its resin UL 94 V-2 or better", trust: secondary}
#   since: 0.1.0
package driploop.rules.routing.loom_burns

poor := {"none": "without a flame rating", "ul-94-hb": "UL 94 HB"}

excludes contains id if {
	some id, segment in input.segments
	segment["in"] != "loom"
}

applies contains id if {
	some id, segment in input.segments
	segment["in"] == "loom"
}

breach contains {"subject": id, "figures": {"loom": poor[segment.loom_rating]}, "limit": {"loom": "UL 94 V-2"}} if {
	some id, segment in input.segments
}
