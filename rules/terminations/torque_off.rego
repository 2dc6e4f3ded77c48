# METADATA
# title: Terminal tightened too little or too much
# description: >-
#   Too loose, the joint heats and shakes itself free. Too tight, the stud stretches or shears, and brass before steel.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/torque-off
#   severity: caution
#   subject: ends
#   applies: every terminal held by a screw or nut
#   needs: [torque_nm, torque_least_nm, torque_most_nm]
#   asks: [stud]
#   decides: [terminal]
#   says: "tightened to {torque}, {limit.bound} {limit.torque} wanted"
#   remedy: "Set it again with a torque wrench, by what the maker of the equipment gives; check the stud first."
#   sources:
#     - {set: workmanship, source: maker, clause: "", asks: "the torque range that the maker of the equipment gives", trust: practice}
#     - {set: workmanship, source: torque-guides, clause: "", asks: "M4 to M10 without a maker's figure: the widest span of published tables", trust: secondary}
#     - {set: workmanship, source: iec-60947-1, clause: "table 4", asks: "at least 1.2 N.m on M4, 2.0 N.m on M5", trust: unverified}
#   since: 0.1.0
package driploop.rules.terminations.torque_off

bolted := {"ring", "captive-spade", "flanged-spade", "solder-lug"}

# The span of the published tables, N.m. Least: M4 and M5 IEC 60947-1 table 4
# (unverified); M6, M8 and M10 a cabinet manual, bolt with one conical washer.
# Most: a power-plant manual, socket caps on 8-32, 10-24, 1/4-20, 5/16-18 and
# 3/8-16: 23, 33, 80, 165 and 290 lbf.in.
limits := {"workmanship": {
	"M4": {"least_nm": 1.2, "most_nm": 2.6},
	"M5": {"least_nm": 2.0, "most_nm": 3.73},
	"M6": {"least_nm": 4.5, "most_nm": 9.04},
	"M8": {"least_nm": 9.0, "most_nm": 18.7},
	"M10": {"least_nm": 13.6, "most_nm": 32.8},
}}

excludes contains id if {
	some id, end in input.ends
	kind := end.terminal
	not kind in bolted
}

applies contains id if {
	some id, end in input.ends
	end.terminal in bolted
}

asks contains {"subject": id, "fact": "stud"} if {
	some id, end in input.ends
	end.torque_range_given == false
}

breach contains {
	"subject": id,
	"clause": "",
	"figures": {"torque_nm": end.torque_nm},
	"limit": {"torque_nm": end.torque_least_nm, "bound": "at least"},
} if {
	some id, end in input.ends
	end.torque_nm < end.torque_least_nm
}

breach contains {
	"subject": id,
	"clause": "",
	"figures": {"torque_nm": end.torque_nm},
	"limit": {"torque_nm": end.torque_most_nm, "bound": "at most"},
} if {
	some id, end in input.ends
	end.torque_nm > end.torque_most_nm
}

# Without the maker's range nothing is met; far off every table is a breach.
breach contains {
	"subject": id,
	"figures": {"torque_nm": end.torque_nm},
	"limit": {"torque_nm": limits.workmanship[end.stud].least_nm, "bound": "at least"},
} if {
	some id, end in input.ends
	end.torque_range_given == false
	end.torque_nm < limits.workmanship[end.stud].least_nm
}

breach contains {
	"subject": id,
	"figures": {"torque_nm": end.torque_nm},
	"limit": {"torque_nm": limits.workmanship[end.stud].most_nm, "bound": "at most"},
} if {
	some id, end in input.ends
	end.torque_range_given == false
	end.torque_nm > limits.workmanship[end.stud].most_nm
}
