# METADATA
# title: Return thinner than the feeds of its circuits
# description: >-
#   No fuse stands in a grounded return: the devices of its circuits alone protect it. A return that several circuits share, or
#   one thinner than its feed, can glow while no device has reason to open.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/return-smaller
#   severity: warning
#   subject: conductors
#   applies: every grounded return of a load, those of cranking motors aside
#   needs: [returns_a, returns_table5_pct, table5_a, size]
#   asks: [feeds_table5_pct]
#   decides: [known_role, ungrounded, returns]
#   says: "the devices of its circuits let {returns} pass; {size} stands {limit.returns} by the same share as a feed"
#   remedy: "Use a return as large as the feeds of its circuits together, or give some of them a return of their own."
#   mends: [size]
#   sources:
#     - {set: workmanship, source: physics, clause: "", asks: "a return stands what its devices let pass; the share is that of 33 CFR 183.455(c)(1) for the conductor that a device protects, which does not speak of returns", trust: computed}
#   related: [conductors/overloaded, protection/device-oversized]
#   since: 0.1.0
package driploop.rules.conductors.return_smaller

# In per cent of Table 5, as 33 CFR 183.455(c)(1) takes it for feeds.
limits := {"workmanship": {"share_pct": 150}}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.known_role != "negative"
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.duty == "cranking"
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.ungrounded == true
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.returns == false
}

applies contains id if {
	some id, conductor in input.conductors
	conductor.known_role == "negative"
	conductor.duty != "cranking"
	conductor.ungrounded == false
	conductor.returns == true
}

breach contains {
	"subject": id,
	"figures": {"returns_a": conductor.returns_a, "size": conductor.size, "share_pct": conductor.returns_table5_pct},
	"limit": {"returns_a": conductor.table5_a * 1.5, "share_pct": limits.workmanship.share_pct},
} if {
	some id, conductor in input.conductors
	conductor.returns_table5_pct > limits.workmanship.share_pct
	conductor.returns_table5_pct > conductor.feeds_table5_pct
}

# Where a feed stands no better, protection/device-oversized speaks of the device
# that is too large for both.
asks contains {"subject": id, "fact": "feeds_table5_pct"} if {
	some id, conductor in input.conductors
	conductor.returns_table5_pct > limits.workmanship.share_pct
}
