# METADATA
# title: Circuit signed off without a test
# description: >-
#   A joint that was never crimped, a pair that was swapped or a fuse that was forgotten shows at once in a test, and otherwise
#   at sea. Nothing in the record says that this circuit was ever tried.
# schemas:
#   - input: schema.facts
# custom:
#   id: documents/not-tested
#   severity: caution
#   subject: loads
#   applies: every load
#   needs: [tested]
#   says: "no test of voltage drop, polarity or function is recorded for it"
#   remedy: "Test the circuit under load and record the readings under tests."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "a new circuit is tested before the job is signed off", trust: practice}
#   related: [documents/signed-before-tested]
#   since: 0.1.0
package driploop.rules.documents.not_tested

breach contains {"subject": id, "figures": {}, "limit": {}} if {
	some id, load in input.loads
	load.tested == false
}
