# METADATA
# title: Cranking returns of two petrol engines not joined
# description: >-
#   When the return of one engine opens, its cranking current finds its way back through the other engine: by throttle
#   cables, thin instrument wires and fuel lines. They glow, beside petrol.
# schemas:
#   - input: schema.facts
# custom:
#   id: sources/cranking-grounds-apart
#   severity: warning
#   subject: vessel
#   applies: a boat with two petrol engines or more
#   needs: [cranking_joined]
#   asks: [cranking_link_mm2, cranking_cable_mm2]
#   decides: [petrol, petrol_engines]
#   says: "{fault}"
#   remedy: "Join the negative sides of the cranking circuits by a conductor at least as large as the cables of the largest starter; isolate both batteries before work."
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.415", asks: "with several petrol engines the grounded cranking circuits are joined by a conductor that carries the starting current of each", trust: read}
#   since: 0.1.0
package driploop.rules.sources.cranking_grounds_apart

excludes contains "vessel" if input.vessel.petrol == false

excludes contains "vessel" if input.vessel.petrol_engines < 2

applies contains "vessel" if {
	input.vessel.petrol
	input.vessel.petrol_engines >= 2
}

asks contains {"subject": "vessel", "fact": fact} if {
	input.vessel.cranking_joined
	some fact in ["cranking_link_mm2", "cranking_cable_mm2"]
}

breach contains {"subject": "vessel", "figures": {"fault": "nothing joins the cranking returns of its petrol engines"}} if {
	input.vessel.cranking_joined == false
}

# The cable that feeds a starter carries its current, and so does a return of its size.
breach contains {
	"subject": "vessel",
	"figures": {"fault": "what joins the cranking returns is smaller than the cable of a starter", "link_mm2": input.vessel.cranking_link_mm2},
	"limit": {"link_mm2": input.vessel.cranking_cable_mm2},
} if {
	input.vessel.cranking_joined
	input.vessel.cranking_link_mm2 < input.vessel.cranking_cable_mm2
}
