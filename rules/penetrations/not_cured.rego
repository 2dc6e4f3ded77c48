# METADATA
# title: Seal put to work before it had cured
# description: >-
#   Compound that water, movement or the strain of its fasteners reaches before it has set never gets its hold. It weeps
#   from then on, and nothing shows until water does.
# schemas:
#   - input: schema.facts
# custom:
#   id: penetrations/not-cured
#   severity: notice
#   subject: penetrations
#   applies: every bedded hole that is wet, washed or immersed on either side
#   needs: [applied, ready_on, in_service]
#   decides: [exposure, compound]
#   says: "had to hold from {held}; the compound put on {applied} needed until {limit.held}"
#   remedy: "Keep water and load off until it has cured, or bed the fitting again; then test it with a hose."
#   sources:
#     - {set: workmanship, source: maker, clause: "", asks: "the cure time that the maker of the compound asks for, as recorded", trust: practice}
#   related: [penetrations/unbedded, documents/signed-before-tested]
#   since: 0.1.0
package driploop.rules.penetrations.not_cured

# Butyl stays soft for good.
without_cure := {"none", "butyl"}

wetted := {"wet", "washed", "immersed"}

excludes contains id if {
	some id, penetration in input.penetrations
	penetration.compound in without_cure
}

excludes contains id if {
	some id, penetration in input.penetrations
	exposure := penetration.exposure
	not exposure in wetted
}

applies contains id if {
	some id, penetration in input.penetrations
	penetration.exposure in wetted
	compound := penetration.compound
	not compound in without_cure
}

# Dates are year-month-day: text order is time order.
breach contains {
	"subject": id,
	"figures": {"held": penetration.in_service, "applied": penetration.applied},
	"limit": {"held": penetration.ready_on},
} if {
	some id, penetration in input.penetrations
	penetration.in_service < penetration.ready_on
}
