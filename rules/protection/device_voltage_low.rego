# METADATA
# title: Fuse or breaker rated below the circuit's voltage
# description: >-
#   A device opened above its rated voltage can fail to put out its arc: it burns on instead of clearing the fault. Ratings
#   for alternating current say nothing about direct current, which is harder to break.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/device-voltage-low
#   severity: warning
#   subject: devices
#   applies: every fuse and breaker
#   needs: [rated_v, nominal_v]
#   says: "rated {rated} in a circuit of {nominal}"
#   remedy: "Fit a device marked for at least {limit.rated} DC."
#   mends: ["voltage: {rated}"]
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.455(d)", asks: "a device's voltage rating is not below the nominal voltage of its circuit", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.220(b)", asks: "fuses suit the voltage of their circuit, as switches do", trust: read}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "a device's voltage rating suits the system", trust: secondary}
#   since: 0.1.0
package driploop.rules.protection.device_voltage_low

breach contains {
	"subject": id,
	"figures": {"rated_v": device.rated_v, "nominal_v": device.nominal_v},
	"limit": {"rated_v": device.nominal_v},
} if {
	some id, device in input.devices
	device.rated_v < device.nominal_v
}
