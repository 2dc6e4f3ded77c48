# METADATA
# title: Isolation from petrol that fails its test
# description: >-
#   A component that can spark is relied on to be out of reach of petrol vapour, but the bulkhead, the height or the distance
#   that should keep it so is not enough. The vapour reaches it and the boat explodes.
# schemas:
#   - input: schema.facts
# custom:
#   id: ignition/isolation-unproven
#   severity: danger
#   subject: components
#   applies: every component near petrol that is not ignition protected and for which isolation is claimed
#   needs: []
#   asks: [isolation_mm, isolation_open_air, isolation_height, water_held_mm, bulkhead_third_mm, seepage_m3]
#   decides: [petrol_near, ignition_protected, isolation_means]
#   says: "isolated by {means}, but {fails}"
#   remedy: "Fit an ignition-protected component, or make the isolation what its clause asks and record the measure."
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.410(b)(2)", asks: "lower than the source with means that keep fuel away, or higher with a deck or enclosure between", trust: read}
#     - {set: us-federal, source: 33-cfr-183, clause: "183.410(b)(3)", asks: "at least two feet apart, open to the atmosphere", trust: read}
#     - {set: us-federal, source: 33-cfr-183, clause: "183.410(c)(2)", asks: "the bulkhead holds water 12 in high, or a third of its height if less, and lets through at most a quarter fluid ounce an hour", trust: read}
#   related: [ignition/spark-near-petrol]
#   since: 0.1.0
package driploop.rules.ignition.isolation_unproven

# 33 CFR 183.410(b)(3): two feet. 183.410(c)(2): 12 in, and a quarter of a US
# fluid ounce (29.5735 mL) in an hour.
limits := {"us-federal": {
	"open air between": {"clause": "183.410(b)(3)", "isolation_mm": 609.6},
	"a bulkhead between": {"clause": "183.410(c)(2)", "water_held_mm": 304.8, "seepage_m3": 0.00000739338},
}}

apart_mm := limits["us-federal"]["open air between"].isolation_mm

water_mm := limits["us-federal"]["a bulkhead between"].water_held_mm

seepage_m3 := limits["us-federal"]["a bulkhead between"].seepage_m3

excludes contains id if {
	some id, component in input.components
	component.electric == false
}

excludes contains id if {
	some id, component in input.components
	component.petrol_near == false
}

excludes contains id if {
	some id, component in input.components
	component.ignition_protected == true
}

applies contains id if {
	some id, component in input.components
	component.electric == true
	component.petrol_near == true
	component.ignition_protected == false
	component.isolation_means != "none"
}

asked := {
	"distance": ["isolation_mm", "isolation_open_air"],
	"lower-with-means": ["isolation_height"],
	"deck": ["isolation_height"],
	"enclosure": ["isolation_height"],
	"bulkhead": ["water_held_mm", "seepage_m3"],
}

asks contains {"subject": id, "fact": fact} if {
	some id, component in input.components
	some fact in asked[component.isolation_means]
}

# Only a bulkhead that holds less than the full height is measured by its third.
asks contains {"subject": id, "fact": "bulkhead_third_mm"} if {
	some id, component in input.components
	component.isolation_means == "bulkhead"
	component.water_held_mm < water_mm
}

breach contains {
	"subject": id,
	"clause": "183.410(b)(3)",
	"figures": {"means": "distance", "fails": "the distance is too small", "isolation_mm": component.isolation_mm},
	"limit": {"isolation_mm": apart_mm},
} if {
	some id, component in input.components
	component.isolation_means == "distance"
	component.isolation_mm < apart_mm
}

breach contains {
	"subject": id,
	"clause": "183.410(b)(3)",
	"figures": {"means": "distance", "fails": "the space between is not open to the air"},
	"limit": {},
} if {
	some id, component in input.components
	component.isolation_means == "distance"
	component.isolation_open_air == false
}

breach contains {
	"subject": id,
	"clause": "183.410(b)(2)",
	"figures": {"means": "being lower", "fails": "it is not lower than the petrol source"},
	"limit": {},
} if {
	some id, component in input.components
	component.isolation_means == "lower-with-means"
	component.isolation_height != "below"
}

breach contains {
	"subject": id,
	"clause": "183.410(b)(2)",
	"figures": {"means": component.isolation_means, "fails": "it is not higher than the petrol source"},
	"limit": {},
} if {
	some id, component in input.components
	component.isolation_means in {"deck", "enclosure"}
	component.isolation_height != "above"
}

breach contains {
	"subject": id,
	"clause": "183.410(c)(2)",
	"figures": {"means": "a bulkhead", "fails": "it holds too little water", "water_held_mm": component.water_held_mm},
	"limit": {"water_held_mm": component.bulkhead_third_mm},
} if {
	some id, component in input.components
	component.isolation_means == "bulkhead"
	component.water_held_mm < water_mm
	component.water_held_mm < component.bulkhead_third_mm
}

breach contains {
	"subject": id,
	"clause": "183.410(c)(2)",
	"figures": {"means": "a bulkhead", "fails": "it lets through too much water", "seepage_m3": component.seepage_m3},
	"limit": {"seepage_m3": seepage_m3},
} if {
	some id, component in input.components
	component.isolation_means == "bulkhead"
	component.seepage_m3 > seepage_m3
}
