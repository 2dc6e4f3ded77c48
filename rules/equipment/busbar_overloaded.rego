# METADATA
# title: Bar carries more than it is rated for
# description: >-
#   An overloaded bar heats its studs and whatever is landed on them. Plastic under it softens, nuts work loose, and loose
#   nuts heat it further.
# schemas:
#   - input: schema.facts
# custom:
#   id: equipment/busbar-overloaded
#   severity: warning
#   subject: components
#   applies: every busbar, post and terminal block
#   needs: [rating_a, current_a]
#   says: "rated {rating}, {current} flows through it"
#   remedy: "Fit a bar rated for at least {current}, or land some circuits on another."
#   sources:
#     - {set: workmanship, source: physics, clause: "", asks: "the current through a bar in any solved case does not exceed its rating", trust: computed}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.220(b)", asks: "fittings suit the voltage and current of their circuit", trust: read}
#   related: [equipment/contact-underrated]
#   since: 0.1.0
package driploop.rules.equipment.busbar_overloaded

applies contains id if {
	some id, component in input.components
	component.kind == "busbar"
}

breach contains {
	"subject": id,
	"figures": {"rating_a": component.rating_a, "current_a": component.current_a},
	"limit": {"current_a": component.rating_a},
} if {
	some id, component in input.components
	component.kind == "busbar"
	component.current_a > component.rating_a
}
