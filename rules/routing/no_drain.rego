# METADATA
# title: Level conduit without drain holes
# description: >-
#   Water that condenses or leaks in stays at the low points. It soaks the insulation for years and finds the one place
#   where it is thin.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/no-drain
#   severity: notice
#   subject: segments
#   applies: every part of a route that lies in conduit
#   needs: [undrained]
#   decides: [in]
#   says: "the conduit runs level and has no drain holes"
#   remedy: "Drill drain holes at its low points; on an inspected vessel 6 mm (1/4 in) holes, at most 1.52 m (5 ft) apart."
#   mends: ["drains: true"]
#   sources:
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.340(b)(6)", asks: "level protective pipes drained by 6 mm (0.25 in) holes every 1,520 mm (5 ft)", trust: read}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "conduit drained so that water cannot collect", trust: unverified}
#   since: 0.1.0
package driploop.rules.routing.no_drain

excludes contains id if {
	some id, segment in input.segments
	segment["in"] != "conduit"
}

applies contains id if {
	some id, segment in input.segments
	segment["in"] == "conduit"
}

breach contains {"subject": id} if {
	some id, segment in input.segments
	segment.undrained
}
