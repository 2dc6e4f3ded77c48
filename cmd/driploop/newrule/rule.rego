# METADATA
# title: TITLE
# description: >-
#   Say in two or three plain sentences what could happen.
# schemas:
#   - input: schema.facts
# custom:
#   id: TOPIC_FAULT
#   severity: caution
#   subject: conductors
#   applies: every conductor
#   needs: [length_mm]
#   says: "{length} long, at most {limit.length} wanted"
#   remedy: "Make it {limit.length} long at most."
#   sources:
#     - {set: yard, source: common-practice, clause: "", asks: "what the yard asks, in its own words", trust: practice}
#   since: 0.1.0
package driploop.yard.PACKAGE

limits := {"yard": {"length_mm": 20000}}

breach contains {"subject": id, "figures": {"length_mm": conductor.length_mm}, "limit": limits.yard} if {
	some id, conductor in input.conductors
	conductor.length_mm > limits.yard.length_mm
}
