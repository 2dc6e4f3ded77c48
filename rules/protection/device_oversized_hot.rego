# METADATA
# title: Device that the regulation allows, too large where it is hot
# description: >-
#   The regulation's ceiling takes the conductor's amperage as for 30 °C. In an engine space the conductor carries less, and
#   the same device lets it run far hotter before it opens.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/device-oversized-hot
#   severity: caution
#   subject: conductors
#   applies: every ungrounded conductor behind a fuse or breaker that keeps 33 CFR 183.455(c)(1); not what 33 CFR 183.455(e) exempts
#   needs: [guard_a, guarded_by, size, allowable_a, guard_table5_pct, guard_allowable_pct]
#   decides: [ungrounded, bare]
#   says: "{guarded_by} of {guard} protects {size}; where it runs hottest, {limit.guard} is 150 % of what it may carry"
#   remedy: "Fit a device of at most {limit.guard}, if that carries the load, or a conductor with a higher insulation rating."
#   mends: [rating, size, "insulation: 105 degC"]
#   sources:
#     - {set: workmanship, source: physics, clause: "", asks: "the share that 33 CFR 183.455(c)(1) takes of Table 5, taken of the amperage corrected by note 1 or for a hotter space; the regulation itself does not ask for that", trust: computed}
#   related: [protection/device-oversized]
#   since: 0.1.0
package driploop.rules.protection.device_oversized_hot

# In per cent, as in 33 CFR 183.455(c)(1).
limits := {"workmanship": {"share_pct": 150}}

# 33 CFR 183.455(e), and the feeds of cranking motors.
exempt := {"cranking", "ignition-secondary", "resistance"}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.bare == true
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.ungrounded == false
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.duty in exempt
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.pigtail
}

excludes contains id if {
	some id, conductor in input.conductors
	not conductor.fed
}

applies contains id if {
	some id, conductor in input.conductors
	not conductor.duty in exempt
	not conductor.pigtail
	conductor.fed
	conductor.ungrounded == true
	conductor.bare == false
}

# Above the regulation's own ceiling it is protection/device-oversized that speaks.
breach contains {
	"subject": id,
	"figures": {"guard_a": conductor.guard_a, "guarded_by": conductor.guarded_by, "size": conductor.size, "share_pct": conductor.guard_allowable_pct},
	"limit": {"guard_a": conductor.allowable_a * 1.5, "share_pct": limits.workmanship.share_pct},
} if {
	some id, conductor in input.conductors
	conductor.guard_allowable_pct > limits.workmanship.share_pct
	conductor.guard_table5_pct <= limits.workmanship.share_pct
}
