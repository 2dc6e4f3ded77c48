# METADATA
# title: Crimp that pulled off too early
# description: >-
#   A crimp that holds too little has not pressed the strands together. It heats under load and comes off by the shaking
#   of the boat, live end first.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/pull-too-low
#   severity: warning
#   subject: ends
#   applies: every crimped terminal on a conductor of at least 18 AWG, under UL 486A of at least 26 AWG
#   needs: [pull_n, pull_time_s, size]
#   decides: [terminal, area_mm2]
#   says: "a sample held {pull}, where {size} has to hold {limit.pull} for a minute"
#   remedy: "Cut the terminals of this batch off. Crimp again with the tool and die made for them, and pull a new sample for a minute before going on."
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "table XVI of an older edition", asks: "a pull by gauge along the conductor, held for one minute", trust: secondary}
#     - {set: workmanship, source: ul-486a, clause: "section 12", asks: "a pull by gauge, held for one minute without parting", trust: secondary}
#   related: [terminations/crimp-tool-unfit]
#   since: 0.1.0
package driploop.rules.terminations.pull_too_low

# Pull in N, cut after the first decimal, by nominal copper area. The tables are by AWG: from_mm2 is that of
# the gauge, below_mm2 that of the next row. A size between two rows, metric ones
# among them, has to hold what the smaller of them has to.
limits := {
	"us-voluntary": {
		"18 AWG": {"from_mm2": 0.823, "below_mm2": 1.309, "pull_n": 44.4, "trust": "secondary"}, # 10 lbf
		"16 AWG": {"from_mm2": 1.309, "below_mm2": 2.081, "pull_n": 66.7, "trust": "secondary"}, # 15 lbf
		"14 AWG": {"from_mm2": 2.081, "below_mm2": 3.309, "pull_n": 133.4, "trust": "secondary"}, # 30 lbf
		"12 AWG": {"from_mm2": 3.309, "below_mm2": 5.261, "pull_n": 155.6, "trust": "secondary"}, # 35 lbf
		"10 AWG": {"from_mm2": 5.261, "below_mm2": 8.366, "pull_n": 177.9, "trust": "secondary"}, # 40 lbf
		"8 AWG": {"from_mm2": 8.366, "below_mm2": 13.3, "pull_n": 200.1, "trust": "unverified"}, # 45 lbf
		"6 AWG": {"from_mm2": 13.3, "below_mm2": 16.77, "pull_n": 222.4, "trust": "unverified"}, # 50 lbf
		"5 AWG": {"from_mm2": 16.77, "below_mm2": 21.15, "pull_n": 266.8, "trust": "unverified"}, # 60 lbf
		"4 AWG": {"from_mm2": 21.15, "below_mm2": 26.67, "pull_n": 311.3, "trust": "secondary"}, # 70 lbf
		"3 AWG": {"from_mm2": 26.67, "below_mm2": 33.63, "pull_n": 355.8, "trust": "secondary"}, # 80 lbf
		"2 AWG": {"from_mm2": 33.63, "below_mm2": 42.41, "pull_n": 400.3, "trust": "secondary"}, # 90 lbf
		"1 AWG": {"from_mm2": 42.41, "below_mm2": 53.48, "pull_n": 444.8, "trust": "secondary"}, # 100 lbf
		"1/0 AWG": {"from_mm2": 53.48, "below_mm2": 67.43, "pull_n": 556, "trust": "unverified"}, # 125 lbf
		"2/0 AWG": {"from_mm2": 67.43, "below_mm2": 85.03, "pull_n": 667.2, "trust": "unverified"}, # 150 lbf
		"3/0 AWG": {"from_mm2": 85.03, "below_mm2": 107.2, "pull_n": 778.4, "trust": "unverified"}, # 175 lbf
		"4/0 AWG": {"from_mm2": 107.2, "below_mm2": 9999, "pull_n": 1000.8, "trust": "unverified"}, # 225 lbf
	},
	"workmanship": {
		"26 AWG": {"from_mm2": 0.1288, "below_mm2": 0.2047, "pull_n": 13.3, "trust": "secondary"}, # 3 lbf
		"24 AWG": {"from_mm2": 0.2047, "below_mm2": 0.3255, "pull_n": 22.2, "trust": "secondary"}, # 5 lbf
		"22 AWG": {"from_mm2": 0.3255, "below_mm2": 0.5176, "pull_n": 35.5, "trust": "secondary"}, # 8 lbf
		"20 AWG": {"from_mm2": 0.5176, "below_mm2": 0.823, "pull_n": 57.8, "trust": "secondary"}, # 13 lbf
		"18 AWG": {"from_mm2": 0.823, "below_mm2": 1.309, "pull_n": 88.9, "trust": "secondary"}, # 20 lbf
		"16 AWG": {"from_mm2": 1.309, "below_mm2": 2.081, "pull_n": 133.4, "trust": "secondary"}, # 30 lbf
		"14 AWG": {"from_mm2": 2.081, "below_mm2": 3.309, "pull_n": 222.4, "trust": "secondary"}, # 50 lbf
		"12 AWG": {"from_mm2": 3.309, "below_mm2": 5.261, "pull_n": 311.3, "trust": "secondary"}, # 70 lbf
		"10 AWG": {"from_mm2": 5.261, "below_mm2": 8.366, "pull_n": 355.8, "trust": "secondary"}, # 80 lbf
		"8 AWG": {"from_mm2": 8.366, "below_mm2": 13.3, "pull_n": 400.3, "trust": "secondary"}, # 90 lbf
		"6 AWG": {"from_mm2": 13.3, "below_mm2": 21.15, "pull_n": 444.8, "trust": "secondary"}, # 100 lbf
		"4 AWG": {"from_mm2": 21.15, "below_mm2": 33.63, "pull_n": 622.7, "trust": "secondary"}, # 140 lbf
		"2 AWG": {"from_mm2": 33.63, "below_mm2": 42.41, "pull_n": 800.6, "trust": "secondary"}, # 180 lbf
		"1 AWG": {"from_mm2": 42.41, "below_mm2": 53.48, "pull_n": 889.6, "trust": "unverified"}, # 200 lbf
		"1/0 AWG": {"from_mm2": 53.48, "below_mm2": 67.43, "pull_n": 1112, "trust": "secondary"}, # 250 lbf
		"2/0 AWG": {"from_mm2": 67.43, "below_mm2": 85.03, "pull_n": 1334.4, "trust": "secondary"}, # 300 lbf
		"3/0 AWG": {"from_mm2": 85.03, "below_mm2": 107.2, "pull_n": 1556.8, "trust": "unverified"}, # 350 lbf
		"4/0 AWG": {"from_mm2": 107.2, "below_mm2": 9999, "pull_n": 2001.6, "trust": "unverified"}, # 450 lbf
	},
}

pulled := {"ring", "captive-spade", "flanged-spade", "spade", "blade", "bullet", "butt"}

# One minute, both sources.
minute_s := 60

excludes contains id if {
	some id, end in input.ends
	kind := end.terminal
	not kind in pulled
}

excludes contains {"subject": id, "set": set} if {
	some id, end in input.ends
	some set, least in {"us-voluntary": limits["us-voluntary"]["18 AWG"].from_mm2, "workmanship": limits.workmanship["26 AWG"].from_mm2}
	end.area_mm2 < least
}

applies contains {"subject": id, "set": set} if {
	some id, end in input.ends
	end.terminal in pulled
	some set, of in limits
	some row in of
	end.area_mm2 >= row.from_mm2
}

breach contains {
	"subject": id,
	"set": set,
	"severity": gravest(row.trust),
	"figures": {"pull_n": end.pull_n, "size": end.size},
	"limit": {"pull_n": row.pull_n},
} if {
	some id, end in input.ends
	some set, of in limits
	some row in of
	end.area_mm2 >= row.from_mm2
	end.area_mm2 < row.below_mm2
	end.pull_n < row.pull_n
}

# Enough, but let go too soon to prove anything.
breach contains {
	"subject": id,
	"set": set,
	"severity": "caution",
	"figures": {"pull_n": end.pull_n, "size": end.size, "time_s": end.pull_time_s},
	"limit": {"pull_n": row.pull_n, "time_s": minute_s},
} if {
	some id, end in input.ends
	end.pull_time_s < minute_s
	some set, of in limits
	some row in of
	end.area_mm2 >= row.from_mm2
	end.area_mm2 < row.below_mm2
}

gravest("secondary") := "warning"

gravest("unverified") := "caution"
