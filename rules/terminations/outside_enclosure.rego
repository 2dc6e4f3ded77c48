# METADATA
# title: Joint outside an enclosure
# description: >-
#   A joint that heats in the open sets fire to what lies next to it. In a fire-retardant box it burns out by itself.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/outside-enclosure
#   severity: caution
#   subject: ends
#   applies: every end of a conductor, batteries and ground points aside
#   needs: [enclosure]
#   says: "the joint on {on} is in no closed enclosure"
#   remedy: "House the joint in a junction box of fire-retardant material."
#   sources:
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.370(f)", asks: "terminations and connections in a fire-retardant enclosure", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.673(c)", asks: "joints in a junction box or enclosure", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.340(g)", asks: "each connection inside an enclosure", trust: read}
#   since: 0.1.0
package driploop.rules.terminations.outside_enclosure

apart := {"battery", "ground"}

applies contains id if {
	some id, end in input.ends
	not end.on_kind in apart
}

breach contains {"subject": id, "figures": {"on": end.on}} if {
	some id, end in input.ends
	end.enclosure in {"none", "open"}
}
