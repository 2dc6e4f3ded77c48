# METADATA
# title: Engine can be started before the blower runs
# description: >-
#   Petrol vapour that has gathered in the engine space is lit by the starter. Only the blower takes it away, and a switch
#   that is worked inside the space can be the spark itself.
# schemas:
#   - input: schema.facts
# custom:
#   id: ignition/blower-not-interlocked
#   severity: warning
#   subject: loads
#   applies: every blower of a space with petrol vapour
#   needs: [before_start, switch_inside]
#   decides: [petrol_near, purpose, vessel.petrol]
#   says: "{fails}"
#   remedy: "Put its switch outside the space, interlock it with starter and ignition, and put the warning sign beside it."
#   sources:
#     - {set: us-inspected, source: 46-cfr-182, clause: "182.460(e)", asks: "the switch stands outside the space, and the blower runs before starter or ignition are live; small vessels may follow 33 CFR 183 Subpart K instead (182.460(m))", trust: read}
#   related: [ignition/spark-near-petrol]
#   since: 0.1.0
package driploop.rules.ignition.blower_not_interlocked

# A blower that stands elsewhere and draws from the engine space by a duct is
# known by its purpose.
excludes contains id if {
	some id, load in input.loads
	load.kind != "blower"
}

excludes contains id if {
	some id, load in input.loads
	load.petrol_near == false
	load.purpose != "blower"
}

excludes contains id if {
	some id, load in input.loads
	load.petrol_near == false
	input.vessel.petrol == false
}

applies contains id if {
	some id, load in input.loads
	load.kind == "blower"
	load.petrol_near == true
}

applies contains id if {
	some id, load in input.loads
	load.kind == "blower"
	load.purpose == "blower"
	input.vessel.petrol == true
}

breach contains {"subject": id, "figures": {"fails": "starter and ignition work before it runs"}, "limit": {}} if {
	some id, load in input.loads
	load.before_start == false
}

breach contains {"subject": id, "figures": {"fails": "its switch stands in the space that it clears"}, "limit": {}} if {
	some id, load in input.loads
	load.petrol_near == true
	load.switch_inside == true
}
