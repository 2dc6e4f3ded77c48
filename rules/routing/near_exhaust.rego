# METADATA
# title: Conductor too near the exhaust
# description: >-
#   Hot exhaust parts bake the insulation until it cracks, then sets fire to it. A dry manifold or riser is far hotter
#   than a hose cooled by water.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/near-exhaust
#   severity: warning
#   subject: segments
#   applies: every part of a route in a space through which an exhaust passes
#   needs: [dry_exhaust, wet_exhaust]
#   asks: [exhaust_dry_mm, exhaust_wet_mm]
#   decides: [dry_exhaust, wet_exhaust]
#   says: "{distance} from a {part}, at least {limit.distance} wanted"
#   remedy: "Lead it at least {limit.distance} away from the {part}, or put a heat shield between and say so."
#   mends: ["exhaust_dry: {distance}", "exhaust_wet: {distance}"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "2 in from wet exhaust parts, 9 in from dry ones", trust: secondary}
#   since: 0.1.0
package driploop.rules.routing.near_exhaust

limits := {"us-voluntary": {
	"dry exhaust": {"distance_mm": 228.6}, # 9 in
	"wet exhaust": {"distance_mm": 50.8}, # 2 in
}}

excludes contains id if {
	some id, segment in input.segments
	segment.dry_exhaust == false
	segment.wet_exhaust == false
}

applies contains id if {
	some id, segment in input.segments
	segment.dry_exhaust
}

applies contains id if {
	some id, segment in input.segments
	segment.wet_exhaust
}

asks contains {"subject": id, "fact": "exhaust_dry_mm"} if {
	some id, segment in input.segments
	segment.dry_exhaust
}

asks contains {"subject": id, "fact": "exhaust_wet_mm"} if {
	some id, segment in input.segments
	segment.wet_exhaust
}

breach contains {
	"subject": id,
	"figures": {"distance_mm": segment.exhaust_dry_mm, "part": "dry exhaust"},
	"limit": {"distance_mm": limits["us-voluntary"]["dry exhaust"].distance_mm},
} if {
	some id, segment in input.segments
	segment.dry_exhaust
	segment.exhaust_dry_mm < limits["us-voluntary"]["dry exhaust"].distance_mm
}

breach contains {
	"subject": id,
	"figures": {"distance_mm": segment.exhaust_wet_mm, "part": "wet exhaust"},
	"limit": {"distance_mm": limits["us-voluntary"]["wet exhaust"].distance_mm},
} if {
	some id, segment in input.segments
	segment.wet_exhaust
	segment.exhaust_wet_mm < limits["us-voluntary"]["wet exhaust"].distance_mm
}
