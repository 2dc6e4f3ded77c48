# METADATA
# title: Charging source that can overcharge
# description: >-
#   Left to itself it boils the battery dry, makes gas all the while, and can drive the battery into thermal runaway.
# schemas:
#   - input: schema.facts
# custom:
#   id: sources/charger-unregulated
#   severity: warning
#   subject: chargers
#   applies: every charging source
#   needs: [regulated]
#   says: "its voltage is not regulated"
#   remedy: "Fit a regulator or a regulated charger made for the chemistry of the battery."
#   sources:
#     - {set: canada, source: ca-sor-2010-91, clause: "729(2)", asks: "the means of charging prevents overcharging", trust: read}
#   since: 0.1.0
package driploop.rules.sources.charger_unregulated

breach contains {"subject": id} if {
	some id, charger in input.chargers
	charger.regulated == false
}
