# METADATA
# title: Bend too tight
# description: >-
#   On the outside of a tight bend the insulation thins and cracks, on the inside the strands buckle. Both fail later, at a
#   place that has looked sound.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/bent-too-tight
#   severity: caution
#   subject: conductors
#   applies: every conductor
#   needs: [bend_radius_mm, diameter_mm, bend_diameters]
#   says: "bent to a radius of {bend_radius}, {times} times its diameter of {diameter}; at least {limit.times} times asked"
#   remedy: "Lead it in a wider bend, of at least {limit.times} times its diameter."
#   sources:
#     - {set: workmanship, source: tm-1-1500-204-23-4, clause: "(27)", asks: "a bend radius of at least ten times the diameter, relaxed at terminal strips", trust: read}
#     - {set: workmanship, source: ac-43-13-1b, clause: "11-96", asks: "ten times the diameter of the largest wire, three times where it is supported at a terminal", trust: unverified}
#   since: 0.1.0
package driploop.rules.conductors.bent_too_tight

limits := {"workmanship": {"times": 10}}

breach contains {
	"subject": id,
	"figures": {"bend_radius_mm": conductor.bend_radius_mm, "diameter_mm": conductor.diameter_mm, "times": conductor.bend_diameters},
	"limit": {"times": limits.workmanship.times},
} if {
	some id, conductor in input.conductors
	conductor.bend_diameters < limits.workmanship.times
}
