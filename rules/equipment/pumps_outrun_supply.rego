# METADATA
# title: All bilge pumps together are too much for their supply
# description: >-
#   When the boat takes water every bilge pump runs at once. If the wire or fuse that they share does not carry them all,
#   the fuse takes the last of them away just then.
# schemas:
#   - input: schema.facts
# custom:
#   id: equipment/pumps-outrun-supply
#   severity: warning
#   subject: vessel
#   applies: every vessel with two or more bilge pumps in the record
#   needs: [pumps_share_pct, pumps_at]
#   decides: [bilge_pumps]
#   says: "all {pumps} bilge pumps together load {at} to {share} of what it carries"
#   remedy: "Give each bilge pump a circuit of its own, or size what they share for all of them together."
#   sources:
#     - {set: us-inspected, source: 46-cfr-182, clause: "182.520(e)(8)", asks: "wiring is sized for all bilge pumps at once; so are the batteries, which this rule does not judge", trust: read}
#     - {set: workmanship, source: physics, clause: "", asks: "what pumps share carries the sum of their currents", trust: computed}
#   related: [conductors/overloaded]
#   since: 0.1.0
package driploop.rules.equipment.pumps_outrun_supply

limits := {"us-inspected": {"share_pct": 100}, "workmanship": {"share_pct": 100}}

# 46 CFR 182.520(e)(8): all of them together, so from two on.
least := 2

excludes contains "vessel" if {
	input.vessel.bilge_pumps < least
}

excludes contains "vessel" if {
	input.vessel.bilge_pumps_most < least
}

applies contains "vessel" if {
	input.vessel.bilge_pumps_most >= least
	input.vessel.bilge_pumps >= least
}

breach contains {
	"subject": "vessel",
	"figures": {"pumps": input.vessel.bilge_pumps, "at": input.vessel.pumps_at, "share_pct": input.vessel.pumps_share_pct},
	"limit": {"share_pct": limits.workmanship.share_pct},
} if {
	input.vessel.pumps_share_pct > limits.workmanship.share_pct
}
