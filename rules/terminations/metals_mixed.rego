# METADATA
# title: Metals that eat each other where they touch
# description: >-
#   Where two such metals touch and get damp, the baser of them corrodes away. The joint grows a skin that does not
#   conduct, heats, and works loose.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/metals-mixed
#   severity: caution
#   subject: ends
#   applies: every terminal held by a screw or nut
#   needs: [anodic_gap_v, faces]
#   asks: [exposure]
#   decides: [terminal]
#   says: "{faces} are {gap} apart on the anodic index, at most {limit.gap} there"
#   remedy: "Use a terminal plated like the stud (tin on tin), or a stud of a metal nearer to it, and keep the joint dry."
#   sources:
#     - {set: workmanship, source: mil-dtl-14072f, clause: "table VI", asks: "metals grouped by their anodic index in sea water, to 0.05 V", trust: secondary}
#     - {set: workmanship, source: mil-dtl-14072f, clause: "3.13.1", asks: "the touching surface counts, so plating governs", trust: read-part}
#     - {set: workmanship, source: common-practice, clause: "", asks: "at most 0.15 V apart in harsh places, 0.25 V in normal ones; a design guide that is often printed, no standard for it was found", trust: practice}
#   since: 0.1.0
package driploop.rules.terminations.metals_mixed

bolted := {"ring", "captive-spade", "flanged-spade", "solder-lug"}

# Harsh is outdoor, salty or humid: anything but dry on a boat. Normal is without
# control of temperature or humidity.
limits := {"workmanship": {"a dry space": {"gap_v": 0.25}, "a damp or wetter space": {"gap_v": 0.15}}}

dry_v := limits.workmanship["a dry space"].gap_v

wet_v := limits.workmanship["a damp or wetter space"].gap_v

excludes contains id if {
	some id, end in input.ends
	kind := end.terminal
	not kind in bolted
}

applies contains id if {
	some id, end in input.ends
	end.terminal in bolted
}

asks contains {"subject": id, "fact": "exposure"} if {
	some id, end in input.ends
	end.anodic_gap_v > wet_v
}

breach contains {
	"subject": id,
	"figures": {"faces": end.faces, "gap_v": end.anodic_gap_v},
	"limit": {"gap_v": dry_v},
} if {
	some id, end in input.ends
	end.anodic_gap_v > dry_v
}

breach contains {
	"subject": id,
	"figures": {"faces": end.faces, "gap_v": end.anodic_gap_v},
	"limit": {"gap_v": wet_v},
} if {
	some id, end in input.ends
	end.anodic_gap_v > wet_v
	end.exposure in {"damp", "wet", "washed", "immersed"}
}
