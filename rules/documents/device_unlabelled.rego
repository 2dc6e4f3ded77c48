# METADATA
# title: Breaker, fuse or switch without a name
# description: >-
#   When something smokes, whoever stands at the panel has seconds to find the right breaker, and tries them all.
# schemas:
#   - input: schema.facts
# custom:
#   id: documents/device-unlabelled
#   severity: caution
#   subject: components
#   applies: every breaker, fuse and switch
#   needs: [label]
#   says: "the {kind} has no label"
#   remedy: "Mark it, or the panel beside it, with the name of what it feeds."
#   sources:
#     - {set: us-inspected, source: 46-cfr-143, clause: "143.400(d)", asks: "breakers are labelled with the load that they serve", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.220(d)", asks: "equipment and circuits are clearly marked", trust: read}
#     - {set: workmanship, source: common-practice, clause: "", asks: "each fuse, breaker and switch says what it serves", trust: practice}
#   related: [documents/conductor-unlabelled, equipment/rating-unmarked]
#   since: 0.1.0
package driploop.rules.documents.device_unlabelled

named := {"breaker", "fuse", "switch"}

applies contains id if {
	some id, component in input.components
	component.kind in named
}

# "none" is how a record says that nothing is marked.
breach contains {"subject": id, "figures": {"kind": component.kind}, "limit": {}} if {
	some id, component in input.components
	component.kind in named
	component.label == "none"
}
