# METADATA
# title: Bonding conductor that carries current
# description: >-
#   Current in the bonding returns through metal under water: fittings, shaft and propeller corrode in weeks. A bonding
#   conductor is sized and joined for none; where it takes the place of a return it can burn, and no fuse sees it.
# schemas:
#   - input: schema.facts
# custom:
#   id: grounding/bonding-carries-current
#   severity: danger
#   subject: conductors
#   applies: every bonding conductor
#   needs: [current_a]
#   decides: [bonding]
#   says: "it carries {current} with equipment running"
#   remedy: "Give each load a return of its own to the negative bus, and keep one connection between that and ground."
#   sources:
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.372(a)", asks: "enclosures are bonded by a conductor that normally carries no current", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.370(a)", asks: "the hull carries no current, corrosion protection and engine starting aside", trust: read}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.350(f)", asks: "one continuous grounding conductor that carries no current", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.673(i)", asks: "frames are bonded by a conductor that carries no current", trust: read}
#     - {set: international, source: iso-13297, clause: "3.2", asks: "a bonding conductor normally carries no current", trust: secondary}
#     - {set: workmanship, source: physics, clause: "", asks: "in no case of the solved network does current take the bonding", trust: computed}
#   related: [grounding/earthed-twice, grounding/negatives-apart]
#   since: 0.1.0
package driploop.rules.grounding.bonding_carries_current

excludes contains id if {
	some id, conductor in input.conductors
	conductor.bonding == false
}

applies contains id if {
	some id, conductor in input.conductors
	conductor.bonding == true
}

breach contains {
	"subject": id,
	"figures": {"current_a": conductor.current_a},
	"limit": {"current_a": 0},
} if {
	some id, conductor in input.conductors
	conductor.bonding == true
	conductor.current_a > 0
}
