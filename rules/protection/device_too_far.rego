# METADATA
# title: Fuse or breaker too far from its source
# description: >-
#   What lies between a source and the first fuse or breaker has no protection at all. If that length chafes through, the whole
#   current of the battery flows into the fault: the conductor glows within seconds and sets fire to what lies beside it.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/device-too-far
#   severity: danger
#   subject: runs
#   applies: every way from a battery or other source to the first fuse or breaker on it, cranking feeds and self-limiting sources aside; under 33 CFR 183 not from a battery with a disconnect switch on a boat built before 1 August 1985
#   needs: [length_mm, own_mm]
#   asks: [enclosed, own_enclosed]
#   decides: [self_limiting]
#   says: "{device} stands {length} along the conductors from {source}, at most {limit.length} allowed"
#   remedy: "Move {device} to within {limit.length} of {source}, measured along the conductors; isolate the source before work."
#   mends: [place]
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.460(a)", asks: "a fuse or breaker within 72 in of a battery, along the conductor; a boat built before 1 August 1985 may have a disconnect switch instead", trust: read}
#     - {set: us-federal, source: 33-cfr-183, clause: "183.455(b)", asks: "elsewhere at the source, else within 7 in, else within 40 in if sheathed or enclosed all the way", trust: read}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "within 7 in of the source connection, which for a branch of a cranking feed is where it leaves it; 40 in if enclosed all the way; 72 in if also on the battery terminal", trust: secondary}
#     - {set: international, source: iso-10133, clause: "8", asks: "within 200 mm of a battery; 1.8 m if sheathed or in conduit", trust: unverified}
#   since: 0.1.0
package driploop.rules.protection.device_too_far

# enclosed_mm: how far if sheathed or enclosed all the way; open_mm: how far if
# not. The 72 in of 33 CFR 183.460(a) asks for no sheath, and is taken over all
# conductors from the battery terminal on. The others measure from the source
# connection of the branch: where it leaves the feed of a cranking motor, which
# needs no device, that is no battery terminal any more.
limits := {
	"us-federal": {
		"from a battery": {"clause": "183.460(a)", "enclosed_mm": 1828.8, "open_mm": 1828.8}, # 72 in
		"from another source": {"clause": "183.455(b)", "enclosed_mm": 1016, "open_mm": 177.8}, # 40 in, 7 in
	},
	"us-voluntary": {
		"from a battery": {"clause": "", "enclosed_mm": 1828.8, "open_mm": 177.8}, # 72 in, 7 in
		"from a cranking feed": {"clause": "", "enclosed_mm": 1016, "open_mm": 177.8}, # 40 in, 7 in
		"from another source": {"clause": "", "enclosed_mm": 1016, "open_mm": 177.8}, # 40 in, 7 in
	},
	# Other sources stand in protection/charging-source-unprotected.
	"international": {
		"from a battery": {"clause": "8", "enclosed_mm": 1800, "open_mm": 200},
		"from a cranking feed": {"clause": "8", "enclosed_mm": 1800, "open_mm": 200},
	},
}

from(kind) := "from a battery" if kind == "battery"

from(kind) := "from a cranking feed" if kind == "cranking-feed"

from(kind) := "from another source" if not kind in {"battery", "cranking-feed"}

# 33 CFR 183.455(e), 183.460(a): feeds of cranking motors, ignition secondary
# and current-controlling resistance conductors.
exempt := {"cranking", "ignition-secondary", "resistance"}

excludes contains id if {
	some id, run in input.runs
	run.duty in exempt
}

# 33 CFR 183.460(a): a boat built before 1 August 1985 may have a disconnect switch
# in the circuit instead. The record has to give the day: silence frees nobody.
excludes contains {"subject": id, "set": "us-federal"} if {
	some id, run in input.runs
	run.source_kind == "battery"
	run.switched
	input.vessel.built_on != ""
	input.vessel.built_on < switch_until
}

switch_until := "1985-08-01"

applies contains {"subject": id, "set": set} if {
	some id, run in input.runs
	not run.duty in exempt
	run.self_limiting == false
	some set, limit in limits
	limit[from(run.source_kind)]
}

# Enclosed or not, it is too far.
breach contains {
	"subject": id,
	"set": "us-federal",
	"clause": limit.clause,
	"figures": {"length_mm": run.length_mm, "device": run.device, "source": run.source},
	"limit": {"length_mm": limit.enclosed_mm},
} if {
	some id, run in input.runs
	limit := limits["us-federal"][from(run.source_kind)]
	run.length_mm > limit.enclosed_mm
}

breach contains {
	"subject": id,
	"set": "us-federal",
	"clause": limit.clause,
	"figures": {"length_mm": run.length_mm, "device": run.device, "source": run.source},
	"limit": {"length_mm": limit.open_mm},
} if {
	some id, run in input.runs
	run.enclosed == false
	limit := limits["us-federal"][from(run.source_kind)]
	run.length_mm > limit.open_mm
}

breach contains {
	"subject": id,
	"set": set,
	"clause": limit.clause,
	"figures": {"length_mm": run.own_mm, "device": run.device, "source": run.own_from},
	"limit": {"length_mm": limit.enclosed_mm},
} if {
	some id, run in input.runs
	some set in ["us-voluntary", "international"]
	limit := limits[set][from(run.own_kind)]
	run.own_mm > limit.enclosed_mm
}

breach contains {
	"subject": id,
	"set": set,
	"clause": limit.clause,
	"figures": {"length_mm": run.own_mm, "device": run.device, "source": run.own_from},
	"limit": {"length_mm": limit.open_mm},
} if {
	some id, run in input.runs
	run.own_enclosed == false
	some set in ["us-voluntary", "international"]
	limit := limits[set][from(run.own_kind)]
	run.own_mm > limit.open_mm
}

# Beyond the limit for a way in the open, all hangs on the enclosure.
asks contains {"subject": id, "set": "us-federal", "fact": "enclosed"} if {
	some id, run in input.runs
	run.length_mm > limits["us-federal"][from(run.source_kind)].open_mm
}

asks contains {"subject": id, "set": set, "fact": "own_enclosed"} if {
	some id, run in input.runs
	some set in ["us-voluntary", "international"]
	run.own_mm > limits[set][from(run.own_kind)].open_mm
}
