# METADATA
# title: Conductor near a fuel line and not safe from it
# description: >-
#   A conductor that can swing against a fuel line wears a hole into it, or shorts on it. One that lies below is soaked by
#   every drip. Either way fuel and sparks meet.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/near-fuel-line
#   severity: warning
#   subject: segments
#   applies: every part of a route in a space through which a line of flammable liquid passes
#   needs: [fuel_line_mm]
#   asks: [fuel_line_side, rigid_support]
#   decides: [fuel_line]
#   says: "{distance} from a fuel line and {fault}"
#   remedy: "Support it rigidly, lead it above the line and fasten nothing to the line, or move it more than {limit.distance} away."
#   sources:
#     - {set: workmanship, source: tm-1-1500-204-23-4, clause: "inspection list (23)", asks: "within 6 in of a line of flammable liquid: close rigid support, never attached to it, routed above it", trust: read}
#   since: 0.1.0
package driploop.rules.routing.near_fuel_line

limits := {"workmanship": {"distance_mm": 152.4}} # 6 in

near_mm := limits.workmanship.distance_mm

faults := {"tied": "fastened to it", "below": "below it"}

excludes contains id if {
	some id, segment in input.segments
	segment.fuel_line == false
}

applies contains id if {
	some id, segment in input.segments
	segment.fuel_line
}

asks contains {"subject": id, "fact": fact} if {
	some id, segment in input.segments
	segment.fuel_line_mm <= near_mm
	some fact in ["fuel_line_side", "rigid_support"]
}

breach contains {
	"subject": id,
	"figures": {"distance_mm": segment.fuel_line_mm, "fault": faults[segment.fuel_line_side]},
	"limit": {"distance_mm": near_mm},
} if {
	some id, segment in input.segments
	segment.fuel_line_mm <= near_mm
}

breach contains {
	"subject": id,
	"figures": {"distance_mm": segment.fuel_line_mm, "fault": "without rigid support"},
	"limit": {"distance_mm": near_mm},
} if {
	some id, segment in input.segments
	segment.fuel_line_mm <= near_mm
	segment.rigid_support == false
}
