# METADATA
# title: Conductor supported too seldom
# description: >-
#   A conductor that hangs works with every wave. It chafes through its insulation, hardens and breaks at the terminals,
#   or sags on to something hot, sharp or wet.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/support-too-far
#   severity: caution
#   subject: segments
#   applies: every part of a route that lies in no conduit, trunking or tray
#   needs: [support_most_mm]
#   asks: [support_mm]
#   decides: [in]
#   says: "supports are {support} apart, at most {limit.support} allowed"
#   remedy: "Add supports, no two of them more than {limit.support} apart, or lay it in conduit, trunking or a tray."
#   mends: ["support: {support}"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "supported throughout, or at least every 18 in", trust: secondary}
#     - {set: international, source: iso-10133, clause: "7.3", asks: "supported at most every 450 mm unless in conduit, trunking or tray", trust: secondary}
#     - {set: international, source: iso-10133, clause: "7.4", asks: "battery conductors up to the disconnect switch supported every 300 mm", trust: secondary}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.340(b)(4)", asks: "metal supports at most 610 mm (24 in) apart", trust: read}
#     - {set: workmanship, source: ac-43-13-1b, clause: "11-96a", asks: "clamps or grommets at most 24 in apart unless in trough, duct or conduit", trust: read}
#   since: 0.1.0
package driploop.rules.routing.support_too_far

limits := {
	"us-voluntary": {"any conductor": {"clause": "", "support_mm": 457.2}}, # 18 in
	"international": {
		"battery cable up to its switch": {"clause": "7.4", "support_mm": 300},
		"other conductors": {"clause": "7.3", "support_mm": 450},
	},
	"us-inspected": {"any conductor": {"clause": "183.340(b)(4)", "support_mm": 610}},
	"workmanship": {"any conductor": {"clause": "11-96a", "support_mm": 609.6}}, # 24 in
}

fits("any conductor", _)

fits("battery cable up to its switch", true)

fits("other conductors", false)

carried := {"conduit", "trunking", "tray"}

excludes contains id if {
	some id, segment in input.segments
	segment["in"] in carried
}

applies contains id if {
	some id, segment in input.segments
	how := segment["in"]
	not how in carried
}

# The most that can lie between two supports is the whole conductor, which hangs
# from its ends: a shorter one needs no support, and its spacing is not asked.
asks contains {"subject": id, "set": set, "fact": "support_mm"} if {
	some id, segment in input.segments
	some set, of in limits
	some kind, limit in of
	fits(kind, segment.to_disconnect)
	segment.support_most_mm > limit.support_mm
}

breach contains {
	"subject": id,
	"set": set,
	"clause": limit.clause,
	"figures": {"support_mm": segment.support_mm},
	"limit": {"support_mm": limit.support_mm},
} if {
	some id, segment in input.segments
	some set, of in limits
	some kind, limit in of
	fits(kind, segment.to_disconnect)
	segment.support_most_mm > limit.support_mm
	segment.support_mm > limit.support_mm
}
