# METADATA
# title: Waiver of nothing
# description: >-
#   The breach that it waives is not there: it was put right, or the waiver names another rule or place than it meant. Left
#   standing it hides the next breach there, which nobody has looked at.
# schemas:
#   - input: schema.facts
# custom:
#   id: documents/waiver-idle
#   severity: notice
#   subject: waivers
#   applies: every waiver
#   needs: [waives, rule, at]
#   says: "no breach of {rule} is found at {at}"
#   remedy: "Take the waiver out, or correct the rule or place that it names."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "a waiver stands only beside the breach that it lets stand", trust: practice}
#   related: [documents/waiver-expired, documents/waiver-without-reason]
#   since: 0.1.0
package driploop.rules.documents.waiver_idle

breach contains {"subject": id, "figures": {"rule": waiver.rule, "at": waiver.at}, "limit": {}} if {
	some id, waiver in input.waivers
	waiver.waives == false
}
