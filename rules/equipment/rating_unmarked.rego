# METADATA
# title: Equipment without its ratings on it
# description: >-
#   Whoever replaces its fuse, its wire or the equipment itself has to guess what it draws and at what voltage.
# schemas:
#   - input: schema.facts
# custom:
#   id: equipment/rating-unmarked
#   severity: notice
#   subject: components
#   applies: every electrical component
#   needs: [marked]
#   says: "voltage and current are not marked on it"
#   remedy: "Mark voltage and current on it or beside it, from the maker's sheet."
#   mends: ["marked: true"]
#   sources:
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.665", asks: "generators, motors and major equipment carry maker, volts, and amperes or watts", trust: read}
#     - {set: us-inspected, source: 46-cfr-143, clause: "143.400(c)", asks: "equipment is marked with its current and voltage rating", trust: read}
#   related: [documents/device-unlabelled]
#   since: 0.1.0
package driploop.rules.equipment.rating_unmarked

applies contains id if {
	some id, component in input.components
	component.electric == true
}

breach contains {"subject": id, "figures": {}, "limit": {}} if {
	some id, component in input.components
	component.electric == true
	component.marked == false
}
