# METADATA
# title: Two stations can drive it opposite ways at once
# description: >-
#   With up at one station and down at the other, both contactors close and short the battery through the reversing box, or
#   the machine turns against the hand that is on it.
# schemas:
#   - input: schema.facts
# custom:
#   id: equipment/stations-not-interlocked
#   severity: caution
#   subject: loads
#   applies: every load that runs both ways
#   needs: [interlocked]
#   asks: [stations]
#   decides: [reversible]
#   says: "{stations} switches command it, and nothing keeps opposite commands apart"
#   remedy: "Fit a control box with an interlock, or lead the commands of one station through the other."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "opposite commands of two stations cannot act together", trust: practice}
#   related: [equipment/deck-switch-unguarded]
#   since: 0.1.0
package driploop.rules.equipment.stations_not_interlocked

excludes contains id if {
	some id, load in input.loads
	load.reversible == false
}

applies contains id if {
	some id, load in input.loads
	load.reversible == true
}

# A single switch gives one command at a time.
asks contains {"subject": id, "fact": "stations"} if {
	some id, load in input.loads
	load.interlocked == false
}

breach contains {"subject": id, "figures": {"stations": load.stations}, "limit": {}} if {
	some id, load in input.loads
	load.interlocked == false
	load.stations > 1
}
