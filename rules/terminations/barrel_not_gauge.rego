# METADATA
# title: Conductor in a barrel of another size
# description: >-
#   In too wide a barrel the strands are never pressed together: the joint heats and pulls out. Into too narrow a one the
#   conductor goes only with strands cut away.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/barrel-not-gauge
#   severity: warning
#   subject: ends
#   applies: every crimped terminal
#   needs: [size, area_mm2, barrel_least_mm2, barrel_most_mm2, barrel]
#   decides: [terminal]
#   says: "{size} in a barrel made for {barrel}"
#   remedy: "Cut it off and crimp on a terminal whose barrel takes {size}."
#   sources:
#     - {set: workmanship, source: ac-43-13-1b, clause: "11-174a", asks: "terminals are chosen by the gauge of the wire", trust: read}
#   since: 0.1.0
package driploop.rules.terminations.barrel_not_gauge

crimped := {"ring", "captive-spade", "flanged-spade", "spade", "blade", "bullet", "butt", "ferrule"}

excludes contains id if {
	some id, end in input.ends
	kind := end.terminal
	not kind in crimped
}

applies contains id if {
	some id, end in input.ends
	end.terminal in crimped
}

breach contains {"subject": id, "figures": {"size": end.size, "barrel": end.barrel}} if {
	some id, end in input.ends
	end.area_mm2 < end.barrel_least_mm2
}

breach contains {"subject": id, "figures": {"size": end.size, "barrel": end.barrel}} if {
	some id, end in input.ends
	end.area_mm2 > end.barrel_most_mm2
}
