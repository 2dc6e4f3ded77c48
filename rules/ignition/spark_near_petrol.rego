# METADATA
# title: Spark beside petrol
# description: >-
#   Petrol vapour is heavier than air and gathers low in the boat. A brush, contact or hot part in the same space can light it:
#   the boat explodes, usually at the moment when somebody turns a key.
# schemas:
#   - input: schema.facts
# custom:
#   id: ignition/spark-near-petrol
#   severity: danger
#   subject: components
#   applies: every electrical component in a space that petrol vapour can reach
#   needs: [ignition_protected]
#   asks: [isolation_means]
#   decides: [petrol_near]
#   says: "a {kind} that is not ignition protected, and not isolated, where petrol vapour can be"
#   remedy: "Fit one that is marked as ignition protected, or move it out of the space; isolate before work and air the space first."
#   mends: ["ignition_protected: true"]
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.410(a)", asks: "a component does not ignite a surrounding mixture of propane and air, unless it is isolated from petrol sources", trust: read}
#     - {set: us-federal, source: 33-cfr-183, clause: "183.410(b)", asks: "the ways to isolate a component", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.530(a)", asks: "explosion-proof, ignition-protected or intrinsically safe equipment in spaces with petrol machinery or tanks", trust: read}
#     - {set: canada, source: ca-sor-2010-91, clause: "s. 608(1), 731(1)", asks: "components certified as ignition protected, unless isolated", trust: read}
#     - {set: international, source: iso-8846, clause: "", asks: "protection against ignition of surrounding flammable gas", trust: unverified}
#     - {set: uk, source: uk-inland-waters-code, clause: "8.3", asks: "no equipment where petrol or gas vapour may gather, or else to ISO 8846", trust: read-part}
#   related: [ignition/isolation-unproven]
#   since: 0.1.0
package driploop.rules.ignition.spark_near_petrol

# What cannot spark or heat needs no protection.
excludes contains id if {
	some id, component in input.components
	component.electric == false
}

applies contains id if {
	some id, component in input.components
	component.electric == true
	component.petrol_near == true
}

asks contains {"subject": id, "fact": "isolation_means"} if {
	some id, component in input.components
	component.ignition_protected == false
}

# A claimed isolation is judged by ignition/isolation-unproven.
breach contains {"subject": id, "figures": {"kind": component.kind}, "limit": {}} if {
	some id, component in input.components
	component.ignition_protected == false
	component.isolation_means == "none"
}
