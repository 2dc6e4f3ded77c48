# METADATA
# title: Cable running down to a device without a drip loop
# description: >-
#   Water runs along the cable into the device or connector at its lower end. Terminals corrode, and what is switched
#   there can fail or start by itself.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/no-drip-loop
#   severity: caution
#   subject: ends
#   applies: every end of a conductor in a damp or wetter space, batteries and ground points aside
#   needs: [unlooped]
#   decides: [exposure]
#   says: "the cable comes down to {on} without a drip loop, in a place that is {exposure}"
#   remedy: "Hang the cable in a loop that is lower than {on}, so that water drips off there, or bring it in from below."
#   mends: ["drip_loop: true"]
#   sources:
#     - {set: workmanship, source: tm-1-1500-204-23-4, clause: "inspection list (24)", asks: "a trap or drip loop where wires run down to a connector, block, panel or box", trust: read}
#     - {set: workmanship, source: ac-43-13-1b, clause: "11-96x", asks: "the same", trust: read}
#     - {set: workmanship, source: ac-43-13-1b, clause: "11-118", asks: "the slack for new terminations comes on top of that of the drip loop", trust: read}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "a drip loop before connections", trust: unverified}
#   related: [penetrations/no-drip-loop]
#   since: 0.1.0
package driploop.rules.routing.no_drip_loop

wet := {"damp", "wet", "washed", "immersed"}

# Nothing runs into a battery post or an engine block.
apart := {"battery", "ground"}

excludes contains id if {
	some id, end in input.ends
	end.on_kind in apart
}

excludes contains id if {
	some id, end in input.ends
	end.exposure == "dry"
}

applies contains id if {
	some id, end in input.ends
	not end.on_kind in apart
	end.exposure in wet
}

breach contains {"subject": id, "figures": {"on": end.on, "exposure": end.exposure}} if {
	some id, end in input.ends
	end.exposure in wet
	end.unlooped
}
