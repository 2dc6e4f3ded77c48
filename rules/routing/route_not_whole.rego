# METADATA
# title: Route that does not add up to the length
# description: >-
#   A part of the way is missing, or the length is wrong. What is judged by the spaces it crosses, and the voltage it
#   loses, is then judged wrongly.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/route-not-whole
#   severity: caution
#   subject: conductors
#   applies: every conductor outside equipment housings
#   needs: [length_mm, route_mm, route_gap_mm, route_gap_pct]
#   says: "its segments add up to {route}, its length is {length}"
#   remedy: "Measure again, and record every space that it crosses with the length in it."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "segments add up to the length to within 50 mm or 5 %, whichever is more", trust: practice}
#   since: 0.1.0
package driploop.rules.routing.route_not_whole

# Common practice, no source: what a tape measure along a cable is good for.
limits := {"workmanship": {"gap_mm": 50, "gap_pct": 5}}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.in_housing
}

applies contains id if {
	some id, conductor in input.conductors
	conductor.in_housing == false
}

breach contains {
	"subject": id,
	"figures": {"route_mm": conductor.route_mm, "length_mm": conductor.length_mm, "gap_mm": conductor.route_gap_mm},
	"limit": {"gap_mm": limits.workmanship.gap_mm},
} if {
	some id, conductor in input.conductors
	conductor.route_gap_mm > limits.workmanship.gap_mm
	conductor.route_gap_pct > limits.workmanship.gap_pct
}
