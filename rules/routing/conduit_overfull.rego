# METADATA
# title: Conduit filled too far
# description: >-
#   Conductors pulled into a conduit that is too tight are stripped on the way in. Once in, they cannot give off their
#   heat, and none can be drawn out for repair.
# schemas:
#   - input: schema.facts
# custom:
#   id: routing/conduit-overfull
#   severity: notice
#   subject: segments
#   applies: every conduit, at the first conductor in it
#   needs: [conduit_holds, fill_least_pct, fill_most_pct]
#   asks: [fill_measured]
#   decides: [in]
#   says: "{cables} cables take {fill} of the bore, at most {limit.fill} wanted"
#   remedy: "Use a wider conduit, or lead some of the cables another way."
#   sources:
#     - {set: workmanship, source: nfpa-70, clause: "chapter 9 table 1", asks: "cables take at most 53 % of the bore if one, 31 % if two, 40 % if more", trust: secondary}
#   since: 0.1.0
package driploop.rules.routing.conduit_overfull

limits := {"workmanship": {
	"one cable": {"fill_pct": 53},
	"two cables": {"fill_pct": 31},
	"three cables or more": {"fill_pct": 40},
}}

most(1) := limits.workmanship["one cable"].fill_pct

most(2) := limits.workmanship["two cables"].fill_pct

most(n) := limits.workmanship["three cables or more"].fill_pct if n > 2

excludes contains id if {
	some id, segment in input.segments
	segment["in"] != "conduit"
}

excludes contains id if {
	some id, segment in input.segments
	segment.conduit_lead == false
}

applies contains id if {
	some id, segment in input.segments
	segment.conduit_lead
	segment["in"] == "conduit"
}

# Diameters that are only computed have to be measured if they might be too much.
asks contains {"subject": id, "fact": "fill_measured"} if {
	some id, segment in input.segments
	segment.fill_most_pct > most(segment.conduit_holds)
}

breach contains {
	"subject": id,
	"figures": {"cables": segment.conduit_holds, "fill_pct": segment.fill_least_pct},
	"limit": {"fill_pct": most(segment.conduit_holds)},
} if {
	some id, segment in input.segments
	segment.fill_least_pct > most(segment.conduit_holds)
}
