# METADATA
# title: Conductor open to mechanical harm
# description: >-
#   Feet, gear and moving machinery crush or cut the conductor. Whoever stands there can be hurt by the arc, and the
#   circuit is lost.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/exposed-to-harm
#   severity: warning
#   subject: segments
#   applies: every part of a route
#   needs: [open_walkway, open_machinery]
#   asks: [moving_parts_mm]
#   says: "it {harm} and is not protected"
#   remedy: "Lead it another way, or protect it with conduit, trunking or a guard."
#   mends: ["protected: true"]
#   sources:
#     - {set: us-inspected, source: 46-cfr-143, clause: "143.575(a)(3)", asks: "not across walking paths nor within 24 in of moving machinery unless adequately protected", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.340(b)(6)", asks: "covering where wiring is subject to mechanical abuse", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.673(b)", asks: "protection where wiring is subject to damage", trust: read}
#   since: 0.1.0
package driploop.rules.routing.exposed_to_harm

limits := {"us-inspected": {"distance_mm": 609.6}} # 24 in

asks contains {"subject": id, "fact": "moving_parts_mm"} if {
	some id, segment in input.segments
	segment.open_machinery
}

breach contains {"subject": id, "figures": {"harm": "crosses a walkway"}} if {
	some id, segment in input.segments
	segment.open_walkway
}

breach contains {
	"subject": id,
	"figures": {"harm": "runs close to moving machinery", "distance_mm": segment.moving_parts_mm},
	"limit": {"distance_mm": limits["us-inspected"].distance_mm},
} if {
	some id, segment in input.segments
	segment.open_machinery
	segment.moving_parts_mm <= limits["us-inspected"].distance_mm
}
