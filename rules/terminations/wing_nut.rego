# METADATA
# title: Wing nut on a heavy conductor
# description: >-
#   Fingers cannot tighten a wing nut enough for a heavy cable. It works loose, sparks beside the battery, and heats at
#   cranking or windlass currents.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/wing-nut
#   severity: caution
#   subject: ends
#   applies: every end of a conductor of 6 AWG or larger, under the voluntary standard on batteries only
#   needs: [nut, size]
#   decides: [area_mm2]
#   says: "a wing nut holds {size} on {on}"
#   remedy: "Fit a hexagon nut with a lock washer, or a lock nut, and tighten it with a wrench; isolate before work."
#   mends: ["nut: lock-nut"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-10, clause: "", asks: "no wing nuts on battery cables of 6 AWG or larger", trust: secondary}
#     - {set: workmanship, source: common-practice, clause: "", asks: "heavy conductors are held by nuts tightened with a wrench", trust: practice}
#   since: 0.1.0
package driploop.rules.terminations.wing_nut

# Nominal area of 6 AWG.
limits := {"us-voluntary": {"area_mm2": 13.3}, "workmanship": {"area_mm2": 13.3}}

excludes contains {"subject": id, "set": "us-voluntary"} if {
	some id, end in input.ends
	end.on_kind != "battery"
}

excludes contains {"subject": id, "set": set} if {
	some id, end in input.ends
	some set, limit in limits
	end.area_mm2 < limit.area_mm2
}

applies contains {"subject": id, "set": "us-voluntary"} if {
	some id, end in input.ends
	end.on_kind == "battery"
	end.area_mm2 >= limits["us-voluntary"].area_mm2
}

applies contains {"subject": id, "set": "workmanship"} if {
	some id, end in input.ends
	end.area_mm2 >= limits.workmanship.area_mm2
}

breach contains {"subject": id, "figures": {"size": end.size, "on": end.on}} if {
	some id, end in input.ends
	end.nut == "wing-nut"
}
