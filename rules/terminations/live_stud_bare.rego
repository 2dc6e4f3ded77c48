# METADATA
# title: Live stud that metal can touch
# description: >-
#   A spanner, a chain or a can that falls across the stud takes the whole current of the battery. Metal melts and flies,
#   hands and eyes are burned, and gas over the battery can explode.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/live-stud-bare
#   severity: danger
#   subject: studs
#   applies: every stud of an ungrounded pole that stays live with all switches open
#   needs: [unguarded]
#   decides: [ungrounded, always_live]
#   says: "{on} stays live, with no fuse or breaker ahead of it and nothing over it"
#   remedy: "Fit a boot or cap over the stud, or a cover over the whole; isolate and cover the other terminals before work."
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.445(b)", asks: "a stud that stays energised is protected against overcurrent, or has a boot, nipple, cap, cover or shield", trust: read}
#   related: [sources/battery-terminals-bare]
#   since: 0.1.0
package driploop.rules.terminations.live_stud_bare

excludes contains id if {
	some id, stud in input.studs
	stud.ungrounded == false
}

excludes contains id if {
	some id, stud in input.studs
	stud.always_live == false
}

applies contains id if {
	some id, stud in input.studs
	stud.ungrounded
	stud.always_live
}

breach contains {"subject": id, "figures": {"on": stud.on}} if {
	some id, stud in input.studs
	stud.ungrounded
	stud.always_live
	stud.unguarded
}
