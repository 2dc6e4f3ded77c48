# METADATA
# title: Parallel conductors that share unequally
# description: >-
#   Of two conductors in parallel the shorter or thicker one takes more than its half. It can be overloaded while the sum looks
#   safe, and when one works loose the other carries all.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/parallels-unequal
#   severity: caution
#   subject: conductors
#   applies: every conductor that lies in parallel with another
#   needs: [share_off_pct]
#   says: "its share of the current is {share_off} off an equal one, in parallel with {others}"
#   remedy: "Use conductors of one size, make and length side by side, or a single larger one."
#   sources:
#     - {set: workmanship, source: physics, clause: "", asks: "conductors in parallel share a current in inverse proportion to their resistances", trust: computed}
#     - {set: workmanship, source: common-practice, clause: "", asks: "shares within 10 % of equal", trust: practice}
#   related: [conductors/overloaded]
#   since: 0.1.0
package driploop.rules.conductors.parallels_unequal

# Common practice, no source.
limits := {"workmanship": {"share_off_pct": 10}}

applies contains id if {
	some id, conductor in input.conductors
	conductor.parallel_with != ""
}

breach contains {
	"subject": id,
	"figures": {"share_off_pct": conductor.share_off_pct, "others": conductor.parallel_with},
	"limit": {"share_off_pct": limits.workmanship.share_off_pct},
} if {
	some id, conductor in input.conductors
	conductor.share_off_pct > limits.workmanship.share_off_pct
}
