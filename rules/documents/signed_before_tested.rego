# METADATA
# title: Signed off before the work was done
# description: >-
#   A sign-off that is older than a test, than the work, or than the day the bedding went on, vouches for something that its
#   signer cannot have seen.
# schemas:
#   - input: schema.facts
# custom:
#   id: documents/signed-before-tested
#   severity: caution
#   subject: job
#   applies: every job
#   needs: [signed_on, last_work, last_work_at, all_dated]
#   says: "signed off on {signed}, but {entry} is of {last}"
#   remedy: "Check what came later and sign again, or correct the date."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "the sign-off is the last entry of the job", trust: practice}
#   related: [documents/not-tested]
#   since: 0.1.0
package driploop.rules.documents.signed_before_tested

# Dates are year-month-day: text order is time order.
breach contains {
	"subject": "job",
	"figures": {"signed": input.job.signed_on, "last": input.job.last_work, "entry": input.job.last_work_at},
	"limit": {},
} if {
	input.job.last_work > input.job.signed_on
}
