# METADATA
# title: Conductor hung on ties or tape alone
# description: >-
#   Plastic ties grow brittle and tape lets go with heat, oil and sun. The conductor then drops on to whatever lies below:
#   a hot manifold, a belt, a bilge.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/ties-as-support
#   severity: caution
#   subject: segments
#   applies: every part of a route that lies in no conduit, trunking or tray; under 46 CFR only on vessels over 19.8 m
#   needs: [conductor_mm]
#   asks: [support_kind]
#   decides: [in, vessel.length_mm]
#   says: "nothing but {support} holds a conductor of {conductor}"
#   remedy: "Hang it from clamps or saddles that are screwed or bolted on; use ties only to hold the bundle together."
#   mends: ["support_kind: saddle", "support_kind: cushioned-clamp"]
#   sources:
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.340(b)(4)", asks: "metal supports; plastic ties only to bundle or retain, with an exception up to 19.8 m (65 ft)", trust: read}
#     - {set: workmanship, source: tm-1-1500-204-23-4, clause: "inspection list (15)", asks: "tape or cord, for which a plastic tie stands today, is not the primary support", trust: read}
#     - {set: workmanship, source: ac-43-13-1b, clause: "11-96o", asks: "tape, tie straps or cord are not the primary support", trust: read}
#   related: [routing/support-too-far]
#   since: 0.1.0
package driploop.rules.routing.ties_as_support

# A conductor shorter than the spacing of supports needs none: 610 mm in 46 CFR
# 183.340(b)(4), 24 in by AC 43.13-1B 11-96a.
limits := {
	"us-inspected": {"conductor_mm": 610},
	"workmanship": {"conductor_mm": 609.6}, # 24 in
}

# 46 CFR 183.340(b)(4): up to 65 ft other standards are accepted.
small_vessel_mm := 19800

carried := {"conduit", "trunking", "tray"}

names := {"tie": "plastic ties", "tape": "tape"}

excludes contains id if {
	some id, segment in input.segments
	segment["in"] in carried
}

excludes contains {"subject": id, "set": "us-inspected"} if {
	some id, _ in input.segments
	input.vessel.length_mm <= small_vessel_mm
}

applies contains {"subject": id, "set": "workmanship"} if {
	some id, segment in input.segments
	how := segment["in"]
	not how in carried
}

applies contains {"subject": id, "set": "us-inspected"} if {
	some id, segment in input.segments
	how := segment["in"]
	not how in carried
	input.vessel.length_mm > small_vessel_mm
}

asks contains {"subject": id, "set": set, "fact": "support_kind"} if {
	some id, segment in input.segments
	some set, limit in limits
	segment.conductor_mm > limit.conductor_mm
}

breach contains {
	"subject": id,
	"set": set,
	"figures": {"support": names[segment.support_kind], "conductor_mm": segment.conductor_mm},
	"limit": {"conductor_mm": limit.conductor_mm},
} if {
	some id, segment in input.segments
	some set, limit in limits
	segment.conductor_mm > limit.conductor_mm
	names[segment.support_kind]
}
