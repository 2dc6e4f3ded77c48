# METADATA
# title: Conductor without a label at both ends
# description: >-
#   In a bundle all red wires look alike. Whoever traces a fault at night cuts or moves the wrong one, and may take a pump
#   or a light away with it.
# schemas:
#   - input: schema.facts
# custom:
#   id: documents/conductor-unlabelled
#   severity: notice
#   subject: conductors
#   applies: every conductor but factory leads and those inside equipment
#   needs: [labelled]
#   says: "labelled at {ends}"
#   remedy: "Mark it at both ends with the name that the diagram gives it."
#   mends: ["labelled: both"]
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "each conductor can be told at both of its ends", trust: practice}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "conductors are identified throughout", trust: unverified}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.220(d)", asks: "equipment and circuits are clearly marked", trust: read}
#   related: [documents/device-unlabelled]
#   since: 0.1.0
package driploop.rules.documents.conductor_unlabelled

ends := {"one": "one end only", "none": "neither end"}

applies contains id if {
	some id, conductor in input.conductors
	conductor.pigtail == false
	conductor.in_housing == false
}

breach contains {"subject": id, "figures": {"ends": ends[conductor.labelled]}, "limit": {}} if {
	some id, conductor in input.conductors
	conductor.labelled in {"one", "none"}
}
