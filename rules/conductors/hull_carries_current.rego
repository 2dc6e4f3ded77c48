# METADATA
# title: Load that returns through bonding
# description: >-
#   Current in the bonding goes where no conductor was meant to lead it: through the hull, the shaft and the water. It eats
#   fittings and plating within weeks, and whoever opens the path with a spanner becomes part of it.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/hull-carries-current
#   severity: danger
#   subject: conductors
#   applies: every bonding conductor, engine starting aside; whether a ground point is the hull or the engine no record tells
#   needs: [returns]
#   decides: [known_role]
#   says: "a load returns through this bonding conductor"
#   remedy: "Give the load a return of its own to the negative bus; let bonding join the negative at one point alone."
#   sources:
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.370(a)", asks: "the hull carries no current, but for cathodic protection and engine starting", trust: read}
#     - {set: us-inspected, source: 46-cfr-129, clause: "129.375(f)", asks: "the same", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.673(l)", asks: "no return through the hull, but for engine starting", trust: read}
#     - {set: uk, source: uk-small-vessel-code, clause: "8.2.1", asks: "two conductors, but for equipment mounted on an engine and returning there", trust: read-part}
#     - {set: workmanship, source: common-practice, clause: "", asks: "bonding carries no current in normal use", trust: practice}
#   since: 0.1.0
package driploop.rules.conductors.hull_carries_current

excludes contains id if {
	some id, conductor in input.conductors
	conductor.known_role != "bonding"
}

excludes contains id if {
	some id, conductor in input.conductors
	conductor.duty == "cranking"
}

applies contains id if {
	some id, conductor in input.conductors
	conductor.known_role == "bonding"
	conductor.duty != "cranking"
}

breach contains {"subject": id, "figures": {}, "limit": {}} if {
	some id, conductor in input.conductors
	conductor.returns == true
}
