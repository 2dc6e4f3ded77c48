# METADATA
# title: Record changed after it was signed
# description: >-
#   The signature vouches for another text than this one. Whoever relies on it cannot tell what was changed, by whom, or
#   whether it was ever true.
# schemas:
#   - input: schema.facts
# custom:
#   id: documents/changed-after-sign-off
#   severity: warning
#   subject: job
#   applies: every job whose sign-off carries the digest of its record
#   needs: [digest, signed_digest]
#   says: "signed as {signed}; the record is now {now}"
#   remedy: "Look at what was changed since, check it, and sign again with the digest of now."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "a signed record is not changed without being signed again", trust: practice}
#   related: [documents/signed-before-tested]
#   since: 0.1.0
package driploop.rules.documents.changed_after_sign_off

applies contains "job" if {
	input.job.digest_given == true
}

breach contains {
	"subject": "job",
	"figures": {"signed": input.job.signed_digest, "now": input.job.digest},
	"limit": {},
} if {
	input.job.signed_digest != input.job.digest
}
