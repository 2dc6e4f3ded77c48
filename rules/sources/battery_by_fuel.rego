# METADATA
# title: Battery beside fuel equipment
# description: >-
#   A dropped tool or a loose cable arcs from the battery to a fuel pipe and burns a hole into it. Fuel that leaks on to
#   the battery, or gas that rises from it, meets the spark.
# schemas:
#   - input: schema.facts
# custom:
#   id: sources/battery-by-fuel
#   severity: danger
#   subject: batteries
#   applies: every battery
#   needs: [fuel_above, fuel_metal_mm]
#   asks: [fuel_shield]
#   says: "{fault}"
#   remedy: "Move the battery or the fuel part, or put a shield of insulating material between metal parts and the battery; let the space air before work."
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.420(c), (d)", asks: "metallic fuel parts within 12 in above its top are shielded by dielectric material; not directly above or below a tank, filter or fitting", trust: read}
#     - {set: international, source: iso-10133, clause: "5.6, 5.7", asks: "metallic fuel parts within 300 mm above its top are insulated; not directly above or below a tank or filter without a deck between", trust: secondary}
#     - {set: us-voluntary, source: abyc-e-10, clause: "", asks: "as 33 CFR 183.420(c) and (d)", trust: unverified}
#   since: 0.1.0
package driploop.rules.sources.battery_by_fuel

limits := {
	"us-federal": {"distance_mm": 304.8}, # 12 in
	"us-voluntary": {"distance_mm": 304.8},
	"international": {"distance_mm": 300},
}

# ISO names no fittings.
near := {
	"us-federal": {"tank", "filter", "fitting"},
	"us-voluntary": {"tank", "filter", "fitting"},
	"international": {"tank", "filter"},
}

names := {"tank": "a fuel tank", "filter": "a fuel filter", "fitting": "a fitting of a fuel line"}

breach contains {"subject": id, "set": set, "figures": {"fault": concat(" ", [names[battery.fuel_above], "is directly above or below it"])}} if {
	some id, battery in input.batteries
	some set, parts in near
	battery.fuel_above in parts
}

asks contains {"subject": id, "set": set, "fact": "fuel_shield"} if {
	some id, battery in input.batteries
	some set, limit in limits
	battery.fuel_metal_mm <= limit.distance_mm
}

breach contains {
	"subject": id,
	"set": set,
	"figures": {"fault": "metal fuel parts close above its top are not shielded from it", "distance_mm": battery.fuel_metal_mm},
	"limit": {"distance_mm": limit.distance_mm},
} if {
	some id, battery in input.batteries
	some set, limit in limits
	battery.fuel_metal_mm <= limit.distance_mm
	battery.fuel_shield == false
}
