# METADATA
# title: Battery that moves, or is not proven to stay
# description: >-
#   A battery that shifts in a seaway pulls its cables off, lands its terminals against metal, and spills acid. Weighing
#   as much as a child, it can also hurt whoever is thrown against it.
# schemas:
#   - input: schema.facts
# custom:
#   id: sources/battery-moves
#   severity: warning
#   subject: batteries
#   applies: every battery
#   needs: [movement_mm, test_force_n]
#   asks: [test_time_s, pulls, twice_weight_n]
#   says: "{test} {measured}, {limit.test} {limit.measured}"
#   remedy: "Strap, chock or clamp the battery, then pull it again: up, fore, aft and to both sides, each for a minute, with the force that the rule names."
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.420(a)", asks: "moves at most one inch when pulled with 90 lb or twice its weight, whichever is less, for a minute in each of five directions", trust: read}
#     - {set: international, source: iso-10133, clause: "5.2", asks: "moves at most 10 mm in any direction under twice its weight", trust: secondary}
#     - {set: us-voluntary, source: abyc-e-10, clause: "", asks: "the same test as 33 CFR 183.420(a)", trust: unverified}
#   since: 0.1.0
package driploop.rules.sources.battery_moves

limits := {
	"us-federal": {"when": "or twice its weight, if less", "movement_mm": 25.4, "force_n": 400.339, "time_s": 60, "pulls": 5}, # 1 in, 90 lbf
	"us-voluntary": {"when": "or twice its weight, if less", "movement_mm": 25.4, "force_n": 400.339, "time_s": 60, "pulls": 5},
	"international": {"when": "under twice its weight", "movement_mm": 10},
}

# The pull is twice the weight, or 90 lbf where that is less; ISO knows no such
# bound.
enough_n := {"us-federal": limits["us-federal"].force_n, "us-voluntary": limits["us-voluntary"].force_n, "international": 1000000}

# It moved too far, whatever it was pulled with.
breach contains {
	"subject": id,
	"set": set,
	"figures": {"test": "in the pull test it moved by", "measured_mm": battery.movement_mm},
	"limit": {"test": "at most", "measured_mm": limit.movement_mm},
} if {
	some id, battery in input.batteries
	some set, limit in limits
	battery.movement_mm > limit.movement_mm
}

asks contains {"subject": id, "set": set, "fact": "twice_weight_n"} if {
	some id, battery in input.batteries
	some set, enough in enough_n
	battery.test_force_n < enough
}

asks contains {"subject": id, "set": set, "fact": "test_time_s"} if {
	some id, _ in input.batteries
	some set, limit in limits
	limit.time_s
}

asks contains {"subject": id, "set": set, "fact": "pulls"} if {
	some id, _ in input.batteries
	some set, limit in limits
	limit.pulls
}

# What follows only leaves open whether it would have moved.
breach contains {
	"subject": id,
	"set": set,
	"severity": "caution",
	"figures": {"test": "it was pulled with no more than", "measured_n": battery.test_force_n},
	"limit": {"test": "at least", "measured_n": min([battery.twice_weight_n, enough])},
} if {
	some id, battery in input.batteries
	some set, enough in enough_n
	battery.test_force_n < enough
	battery.test_force_n < battery.twice_weight_n
}

breach contains {
	"subject": id,
	"set": set,
	"severity": "caution",
	"figures": {"test": "each pull was held for", "measured_s": battery.test_time_s},
	"limit": {"test": "at least", "measured_s": limit.time_s},
} if {
	some id, battery in input.batteries
	some set, limit in limits
	battery.test_time_s < limit.time_s
}

breach contains {
	"subject": id,
	"set": set,
	"severity": "caution",
	"figures": {"test": "directions in which it was pulled:", "measured": battery.pulls},
	"limit": {"test": "at least", "measured": limit.pulls},
} if {
	some id, battery in input.batteries
	some set, limit in limits
	battery.pulls < limit.pulls
}
