# METADATA
# title: Motor that cannot be cut off where it stands
# description: >-
#   Whoever has a hand in the machine cannot see who turns the current back on. A motor that starts then takes fingers.
# schemas:
#   - input: schema.facts
# custom:
#   id: equipment/no-local-disconnect
#   severity: caution
#   subject: loads
#   applies: every motor, pump and blower
#   needs: [local_disconnect]
#   says: "nothing cuts it off in sight of it, and nothing can be locked open"
#   remedy: "Fit a disconnect in sight of the {kind}, or one that takes a padlock when open."
#   mends: ["local_disconnect: in-sight"]
#   sources:
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.380(j), (k)", asks: "a disconnect ahead of the fuses, which can be locked open if it is out of sight of the load", trust: read}
#   since: 0.1.0
package driploop.rules.equipment.no_local_disconnect

moving := {"motor", "pump", "blower"}

applies contains id if {
	some id, load in input.loads
	load.kind in moving
}

breach contains {"subject": id, "figures": {"kind": load.kind}, "limit": {}} if {
	some id, load in input.loads
	load.kind in moving
	load.local_disconnect == "none"
}
