# METADATA
# title: Conductor bundled with alternating current
# description: >-
#   Where the insulation of both chafes through, mains voltage stands on the low-voltage system, on its switches, engine
#   and bonded metal. Whoever touches them, on board or in the water, can be killed.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/ac-with-dc
#   severity: warning
#   subject: segments
#   applies: every part of a route
#   needs: [with_ac]
#   says: "it runs {way} alternating current"
#   remedy: "Lead the AC conductors apart, or in a sheath of their own, and keep the two apart along the whole way; isolate both before work."
#   mends: ["with_ac: separated"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "AC conductors are sheathed, bundled or otherwise kept apart from DC", trust: secondary}
#     - {set: international, source: iso-10133, clause: "7.8", asks: "DC not in one wiring system with AC unless screened or separated", trust: secondary}
#   since: 0.1.0
package driploop.rules.routing.ac_with_dc

ways := {"bundled": "in one bundle with", "one-sheath": "in one sheath with"}

breach contains {"subject": id, "figures": {"way": ways[segment.with_ac]}} if {
	some id, segment in input.segments
}
