# METADATA
# title: Waiver past its last day
# description: >-
#   The breach was let stand for a time, and the time is over. It counts again as what it is.
# schemas:
#   - input: schema.facts
# custom:
#   id: documents/waiver-expired
#   severity: warning
#   subject: waivers
#   applies: every waiver
#   needs: [until, job.today]
#   says: "it held until {until}; today is {today}"
#   remedy: "Put the breach right, or have it waived again by whoever may decide, with a new date."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "a breach is let stand only until a day that is set", trust: practice}
#   related: [documents/waiver-idle, documents/waiver-without-reason]
#   since: 0.1.0
package driploop.rules.documents.waiver_expired

# A waiver holds up to and on its last day. Dates are year-month-day: text order
# is time order.
breach contains {"subject": id, "figures": {"until": waiver.until, "today": input.job.today}, "limit": {}} if {
	some id, waiver in input.waivers
	waiver.until < input.job.today
}
