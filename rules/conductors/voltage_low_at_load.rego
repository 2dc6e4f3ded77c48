# METADATA
# title: Too little voltage at the load when the battery is low
# description: >-
#   Equipment below its least voltage switches off, resets or stalls. With a low battery that is a radio that drops out on
#   sending, or a windlass that stops under load.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/voltage-low-at-load
#   severity: caution
#   subject: loads
#   applies: every load
#   needs: [low_voltage_v, min_v]
#   says: "{voltage} is left at its terminals with a low battery; it needs {limit.voltage}"
#   remedy: "Use larger conductors to {subject} and back, or equipment that works from less; keep the battery charged meanwhile."
#   mends: [size]
#   sources:
#     - {set: workmanship, source: maker, clause: "", asks: "at least the voltage that the maker of the load asks for", trust: computed}
#   related: [conductors/drop-excessive]
#   since: 0.1.0
package driploop.rules.conductors.voltage_low_at_load

breach contains {
	"subject": id,
	"figures": {"voltage_v": load.low_voltage_v},
	"limit": {"voltage_v": load.min_v},
} if {
	some id, load in input.loads
	load.low_voltage_v < load.min_v
}
