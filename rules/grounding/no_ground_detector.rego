# METADATA
# title: Insulated system without a ground detector
# description: >-
#   The first fault to ground of an insulated system shows nowhere. It stays until a second one on the other pole makes a
#   short circuit through hull, shaft or a person.
# schemas:
#   - input: schema.facts
# custom:
#   id: grounding/no-ground-detector
#   severity: caution
#   subject: vessel
#   applies: every vessel with an insulated system
#   needs: [detector]
#   decides: [earthing]
#   says: "both poles are insulated, and no ground detector is fitted"
#   remedy: "Fit a ground detector at the main panel, and look at it before each trip."
#   sources:
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.378", asks: "each ungrounded system has a ground detector at its switchboard", trust: read}
#   related: [grounding/positive-earthed]
#   since: 0.1.0
package driploop.rules.grounding.no_ground_detector

excludes contains "vessel" if {
	input.vessel.earthing != "insulated"
}

applies contains "vessel" if {
	input.vessel.earthing == "insulated"
}

breach contains {"subject": "vessel", "figures": {}, "limit": {}} if {
	input.vessel.earthing == "insulated"
	input.vessel.detector == false
}
