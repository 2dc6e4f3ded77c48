# METADATA
# title: No slack to cut a terminal off and fit a new one
# description: >-
#   The next repair has no conductor left. It ends in a splice, or in a conductor under tension that pulls its terminal
#   loose.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/no-slack
#   severity: notice
#   subject: ends
#   applies: every end of a conductor
#   needs: [slack]
#   says: "the slack allows {slack}, two are wanted"
#   remedy: "Leave enough slack at {on} for two new terminations, on top of the drip loop."
#   mends: ["slack: two"]
#   sources:
#     - {set: workmanship, source: ac-43-13-1b, clause: "11-118", asks: "slack at lugs and connectors for two re-terminations, beyond the drip loop", trust: read}
#   since: 0.1.0
package driploop.rules.routing.no_slack

allows := {"one": "one re-termination", "none": "no re-termination"}

breach contains {"subject": id, "figures": {"slack": allows[end.slack], "on": end.on}, "limit": {"slack": "two re-terminations"}} if {
	some id, end in input.ends
}
