# METADATA
# title: Insulation that oil eats, in an engine space
# description: >-
#   Oil and fuel swell and soften common insulation. It slips off the conductor at the first pull, and what hangs down shorts to
#   the engine.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/not-oil-resistant
#   severity: caution
#   subject: conductors
#   applies: every conductor that runs in or passes through an engine space
#   needs: [oil_resistant]
#   decides: [in_engine_space]
#   says: "its insulation is not oil resistant, and it runs through an engine space"
#   remedy: "Replace it by cable marked as oil resistant, or lead it another way."
#   mends: ["oil_resistant: true"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "11.16.1.3.4", asks: "by an older edition, oil-resistant insulation in engine spaces", trust: secondary}
#   related: [conductors/insulation-too-cool]
#   since: 0.1.0
package driploop.rules.conductors.not_oil_resistant

excludes contains id if {
	some id, conductor in input.conductors
	conductor.in_engine_space == false
}

applies contains id if {
	some id, conductor in input.conductors
	conductor.in_engine_space == true
}

breach contains {"subject": id, "figures": {}, "limit": {}} if {
	some id, conductor in input.conductors
	conductor.oil_resistant == false
}
