# METADATA
# title: Conductor spliced again, or close to its end
# description: >-
#   Each splice is a place that can heat, corrode or come apart, and most are hidden. One next to a terminal is worked by
#   every pull on it.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/spliced-again
#   severity: caution
#   subject: conductors
#   applies: every conductor
#   needs: [splices]
#   asks: [splice_from_end_mm]
#   says: "{fault}"
#   remedy: "Replace the conductor by one without a splice."
#   sources:
#     - {set: workmanship, source: ac-43-13-1b, clause: "11-167c", asks: "at most one splice in a wire between two connection points", trust: secondary}
#     - {set: workmanship, source: ac-43-13-1b, clause: "11-167", asks: "no splice within 12 in of a termination", trust: unverified}
#   since: 0.1.0
package driploop.rules.terminations.spliced_again

limits := {"workmanship": {
	"in one conductor": {"splices": 1},
	"from a termination": {"distance_mm": 304.8}, # 12 in
}}

near_mm := limits.workmanship["from a termination"].distance_mm

asks contains {"subject": id, "fact": "splice_from_end_mm"} if {
	some id, conductor in input.conductors
	conductor.splices > 0
}

breach contains {
	"subject": id,
	"clause": "11-167c",
	"figures": {"fault": "more than one splice in it", "splices": conductor.splices},
	"limit": {"splices": limits.workmanship["in one conductor"].splices},
} if {
	some id, conductor in input.conductors
	conductor.splices > limits.workmanship["in one conductor"].splices
}

breach contains {
	"subject": id,
	"clause": "11-167",
	"severity": "notice",
	"figures": {"fault": "a splice close to its end", "distance_mm": conductor.splice_from_end_mm},
	"limit": {"distance_mm": near_mm},
} if {
	some id, conductor in input.conductors
	conductor.splices > 0
	conductor.splice_from_end_mm < near_mm
}
