# METADATA
# title: Waiver without reason, author or date
# description: >-
#   Nobody can tell later who let the breach stand, why, or for how long, so nobody will look at it again. It is not counted:
#   the breach stands.
# schemas:
#   - input: schema.facts
# custom:
#   id: documents/waiver-without-reason
#   severity: warning
#   subject: waivers
#   applies: every waiver
#   says: "it lacks {parts}"
#   remedy: "Write why the breach may stand, who decided it, and until when; or take the waiver out."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "a waiver gives its reason, its author and its last day", trust: practice}
#   related: [documents/waiver-expired, documents/waiver-idle]
#   since: 0.1.0
package driploop.rules.documents.waiver_without_reason

breach contains {"subject": id, "figures": {"parts": concat(", ", waiver.lacks)}, "limit": {}} if {
	some id, waiver in input.waivers
	count(waiver.lacks) > 0
}
