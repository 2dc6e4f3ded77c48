# METADATA
# title: Hole in the bulkhead that keeps petrol away
# description: >-
#   Petrol vapour is heavier than air and flows through any opening low in a bulkhead, or through the gap around a cable.
#   On the other side nothing is ignition protected, because the bulkhead was relied on: the boat explodes.
# schemas:
#   - input: schema.facts
# custom:
#   id: penetrations/vapour-bulkhead-holed
#   severity: danger
#   subject: penetrations
#   applies: every hole in a bulkhead that isolates petrol
#   needs: [seal_kind, hole_height_mm]
#   asks: [ip_immersion, panel_third_mm, gap_mm, passing]
#   decides: [vapour_bulkhead]
#   says: "{fails}"
#   remedy: "Close the hole with a gland that is proven against immersion, or lead the cable through higher up and fill the gap around it."
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.410(c)(2)", asks: "the bulkhead holds water 12 in high, or a third of its height if less, and lets through at most a quarter fluid ounce an hour", trust: read}
#     - {set: us-federal, source: 33-cfr-183, clause: "183.410(c)(3)", asks: "higher up only openings for conductors, pipes, ducts, doors and the like, with a gap of at most a quarter inch around them", trust: read}
#   related: [ignition/isolation-unproven, ignition/spark-near-petrol]
#   since: 0.1.0
package driploop.rules.penetrations.vapour_bulkhead_holed

# 33 CFR 183.410(c)(2): 12 in. (c)(3): 1/4 in.
limits := {"us-federal": {
	"up to where it holds water": {"clause": "183.410(c)(2)", "hole_height_mm": 304.8},
	"around what passes, above that": {"clause": "183.410(c)(3)", "gap_mm": 6.35},
}}

line_mm := limits["us-federal"]["up to where it holds water"].hole_height_mm

gap_most_mm := limits["us-federal"]["around what passes, above that"].gap_mm

# What is pressed or poured around the cable leaves no gap.
fills := {"gland", "compound", "connector"}

excludes contains id if {
	some id, penetration in input.penetrations
	penetration.vapour_bulkhead == false
}

applies contains id if {
	some id, penetration in input.penetrations
	penetration.vapour_bulkhead == true
}

# The third of the height counts only where the hole lies under 12 in.
asks contains {"subject": id, "fact": "panel_third_mm"} if {
	some id, penetration in input.penetrations
	penetration.hole_height_mm <= line_mm
}

asks contains {"subject": id, "fact": "gap_mm"} if {
	some id, penetration in input.penetrations
	kind := penetration.seal_kind
	not kind in fills
}

# What is proven against immersion holds water, and leaves no gap, at any height.
asks contains {"subject": id, "fact": "ip_immersion"} if {
	some id, penetration in input.penetrations
	penetration.seal_kind != "none"
	penetration.hole_height_mm <= line_mm
	penetration.hole_height_mm <= penetration.panel_third_mm
}

asks contains {"subject": id, "fact": "ip_immersion"} if {
	some id, penetration in input.penetrations
	penetration.seal_kind != "none"
	penetration.gap_mm > gap_most_mm
}

asks contains {"subject": id, "fact": "passing"} if {
	some id, penetration in input.penetrations
	penetration.seal_kind == "none"
}

breach contains {
	"subject": id,
	"clause": "183.410(c)(2)",
	"figures": {"fails": "nothing closes the hole, and it lies where the bulkhead has to hold water", "hole_height_mm": penetration.hole_height_mm},
	"limit": {"hole_height_mm": min([line_mm, penetration.panel_third_mm])},
} if {
	some id, penetration in input.penetrations
	penetration.seal_kind == "none"
	penetration.hole_height_mm <= line_mm
	penetration.hole_height_mm <= penetration.panel_third_mm
}

# A seal that no test proves watertight may yet be so.
breach contains {
	"subject": id,
	"severity": "warning",
	"clause": "183.410(c)(2)",
	"figures": {"fails": "the seal is not proven against standing water, and it lies where the bulkhead has to hold water", "hole_height_mm": penetration.hole_height_mm},
	"limit": {"hole_height_mm": min([line_mm, penetration.panel_third_mm])},
} if {
	some id, penetration in input.penetrations
	penetration.seal_kind != "none"
	penetration.ip_immersion == false
	penetration.hole_height_mm <= line_mm
	penetration.hole_height_mm <= penetration.panel_third_mm
}

breach contains {
	"subject": id,
	"clause": "183.410(c)(3)",
	"figures": {"fails": "the gap around what passes is too wide", "gap_mm": penetration.gap_mm},
	"limit": {"gap_mm": gap_most_mm},
} if {
	some id, penetration in input.penetrations
	penetration.seal_kind == "none"
	penetration.gap_mm > gap_most_mm
}

breach contains {
	"subject": id,
	"clause": "183.410(c)(3)",
	"figures": {"fails": "the gap around what passes is too wide", "gap_mm": penetration.gap_mm},
	"limit": {"gap_mm": gap_most_mm},
} if {
	some id, penetration in input.penetrations
	kind := penetration.seal_kind
	not kind in fills
	penetration.ip_immersion == false
	penetration.gap_mm > gap_most_mm
}

breach contains {
	"subject": id,
	"clause": "183.410(c)(3)",
	"figures": {"fails": "nothing passes through the hole, and nothing closes it"},
	"limit": {},
} if {
	some id, penetration in input.penetrations
	penetration.seal_kind == "none"
	penetration.passing == 0
}
