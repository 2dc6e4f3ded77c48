# METADATA
# title: Conductor carries more than it may
# description: >-
#   The insulation ages fast, softens and lets go; where the conductor lies on others or on a hot part, it can burn. The damage
#   is hidden and does not heal when the load goes down.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/overloaded
#   severity: danger
#   subject: conductors
#   applies: every conductor that carries current, but for those that 33 CFR 183.425(g) exempts
#   needs: [current_a, allowable_a, size]
#   decides: [exposed_mm]
#   says: "{size} carries {current}, at most {limit.current} allowed where it runs"
#   remedy: "Use a conductor that may carry at least {current} there: a larger one, or one of a higher insulation rating."
#   mends: [size]
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.425(b), (c)", asks: "no more current than Table 5 allows, times note 1 in engine spaces, intermittent surges aside", trust: read}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.370(d)(1)", asks: "cable for power and lighting under 50 V keeps 33 CFR 183.425", trust: read}
#     - {set: us-inspected, source: 46-cfr-143, clause: "143.575(a)(1)", asks: "conductors of sufficient capacity, with no figure; Table 5 is the yardstick here", trust: read}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "single-conductor values like those of Table 5 with note 1", trust: secondary}
#   since: 0.1.0
package driploop.rules.conductors.overloaded

# The values of Table 5 and of its note 1 stand with the facts, by size and rating.
limits := {
	"us-federal": {
		"elsewhere": {"clause": "183.425(b)", "current": "Table 5 by size and rating of the insulation"},
		"in an engine space": {"clause": "183.425(c)", "current": "Table 5 times note 1: 0.58 at 60 °C, 0.75 at 75, 0.78 at 80, 0.82 at 90, 0.85 at 105, 0.89 at 125, 1 at 200"},
	},
	"us-inspected": {"current": "Table 5 of 33 CFR 183.425 with note 1"},
	"us-voluntary": {"current": "the same table, as reported"},
}

# 33 CFR 183.425(g). Its exemption of electronic circuits under one ampere needs
# no word here: no size in Table 5 is allowed less than that.
exempt := {"communication", "navigation", "resistance", "ignition-secondary", "cranking"}

# A pigtail is exempt if less than 7 in of it is exposed.
pigtail_mm := 177.8

excludes contains id if {
	some id, conductor in input.conductors
	conductor.role == "bonding"
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.duty in exempt
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.in_housing
}

applies contains id if {
	some id, conductor in input.conductors
	not id in excludes
	not conductor.pigtail
}

applies contains id if {
	some id, conductor in input.conductors
	not id in excludes
	conductor.pigtail
	conductor.exposed_mm >= pigtail_mm
}

breach contains {
	"subject": id,
	"figures": {"current_a": conductor.current_a, "size": conductor.size},
	"limit": {"current_a": conductor.allowable_a},
} if {
	some id, conductor in input.conductors
	conductor.current_a > conductor.allowable_a
}
