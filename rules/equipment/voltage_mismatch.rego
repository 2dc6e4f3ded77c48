# METADATA
# title: Equipment for another voltage
# description: >-
#   A load made for a lower voltage overheats and can burn; one made for a higher voltage stalls or fails to start when it is
#   needed.
# schemas:
#   - input: schema.facts
# custom:
#   id: equipment/voltage-mismatch
#   severity: warning
#   subject: loads
#   applies: every load
#   needs: [rated_v, nominal_v]
#   says: "made for {rated} in a circuit of {nominal}"
#   remedy: "Fit equipment for {limit.rated}, or feed it through a converter."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "a load's nominal voltage is that of its circuit", trust: practice}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.220(b)", asks: "fittings suit the voltage and current of their circuit", trust: read}
#   related: [protection/device-voltage-low]
#   since: 0.1.0
package driploop.rules.equipment.voltage_mismatch

breach contains {
	"subject": id,
	"figures": {"rated_v": load.rated_v, "nominal_v": load.nominal_v},
	"limit": {"rated_v": load.nominal_v},
} if {
	some id, load in input.loads
	load.rated_v != load.nominal_v
}
