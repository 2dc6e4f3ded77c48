# METADATA
# title: Conductor carries more than it may among others
# description: >-
#   Conductors that lie together warm each other. One that is cool enough on its own ages fast in the middle of a thick bundle,
#   and its neighbours with it; the first to fail shorts into all of them.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/overloaded-in-bundle
#   severity: warning
#   subject: conductors
#   applies: every conductor that carries current and runs with two others or more, cranking feeds aside
#   needs: [size, current_a]
#   asks: [bundled_a]
#   decides: [load_pct, bundle_size]
#   says: "{size} carries {current}, at most {limit.current} allowed among the conductors it runs with"
#   remedy: "Take it out of the bundle, part the bundle, or use a conductor that may carry at least {current} there."
#   mends: [size]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "on direct current too, in newer editions, the amperage times 0.70 for 3 conductors together, 0.60 for 4 to 6, 0.50 for 7 to 24, 0.40 for more; the newest factors may be harsher", trust: secondary}
#   related: [conductors/overloaded]
#   since: 0.1.0
package driploop.rules.conductors.overloaded_in_bundle

# Of the current that it may carry alone where it runs, by the number of conductors
# together.
limits := {"us-voluntary": {
	"3 together": {"share_pct": 70},
	"4 to 6 together": {"share_pct": 60},
	"7 to 24 together": {"share_pct": 50},
	"25 together and more": {"share_pct": 40},
}}

# 33 CFR 183.435(b) has the same factors for conductors of 50 V and more only, so
# this is no law under 50 V.

# A bundle starts here: a conductor and its return take no factor.
least_size := 3

# The hardest factor, for 25 conductors and more, in per cent. What stays within it is met
# whatever it runs with, and nobody has to count.
hardest_pct := limits["us-voluntary"]["25 together and more"].share_pct

excludes contains id if {
	some id, conductor in input.conductors
	conductor.role == "bonding"
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.duty == "cranking"
}

# Alone or with its return, it is conductors/overloaded that judges it.
excludes contains id if {
	some id, conductor in input.conductors
	conductor.load_pct > hardest_pct
	conductor.bundle_size < least_size
}

concerned contains id if {
	some id, conductor in input.conductors
	conductor.role != "bonding"
	conductor.duty != "cranking"
}

applies contains id if {
	some id in concerned
	input.conductors[id].load_pct <= hardest_pct
}

applies contains id if {
	some id in concerned
	input.conductors[id].load_pct > hardest_pct
	input.conductors[id].bundle_size >= least_size
}

breach contains {
	"subject": id,
	"figures": {"current_a": conductor.current_a, "size": conductor.size},
	"limit": {"current_a": conductor.bundled_a},
} if {
	some id, conductor in input.conductors
	conductor.load_pct > hardest_pct
	conductor.current_a > conductor.bundled_a
}

asks contains {"subject": id, "fact": "bundled_a"} if {
	some id, conductor in input.conductors
	conductor.load_pct > hardest_pct
}
