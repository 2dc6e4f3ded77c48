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
#   decides: [terminal, gauge]
#   says: "a sample held {pull}, where {size} has to hold {limit.pull} for a minute"
#   remedy: "Cut the terminals of this batch off. Crimp again with the tool and die made for them, and pull a new sample for a minute before going on."
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "table XVI of an older edition", asks: "a pull by gauge along the conductor, held for one minute", trust: secondary}
#     - {set: workmanship, source: ul-486a, clause: "section 12", asks: "a pull by gauge, held for one minute without parting", trust: secondary}
#   related: [terminations/crimp-tool-unfit]
#   since: 0.1.0
package driploop.rules.terminations.pull_too_low

# Pull in N by gauge, cut after the third decimal.
limits := {
	"us-voluntary": {
		"18 AWG": {"pull_n": 44.482, "trust": "secondary"}, # 10 lbf
		"16 AWG": {"pull_n": 66.723, "trust": "secondary"}, # 15 lbf
		"14 AWG": {"pull_n": 133.446, "trust": "secondary"}, # 30 lbf
		"12 AWG": {"pull_n": 155.687, "trust": "secondary"}, # 35 lbf
		"10 AWG": {"pull_n": 177.928, "trust": "secondary"}, # 40 lbf
		"8 AWG": {"pull_n": 200.169, "trust": "unverified"}, # 45 lbf
		"6 AWG": {"pull_n": 222.411, "trust": "unverified"}, # 50 lbf
		"5 AWG": {"pull_n": 266.893, "trust": "unverified"}, # 60 lbf
		"4 AWG": {"pull_n": 311.375, "trust": "secondary"}, # 70 lbf
		"3 AWG": {"pull_n": 355.857, "trust": "secondary"}, # 80 lbf
		"2 AWG": {"pull_n": 400.339, "trust": "secondary"}, # 90 lbf
		"1 AWG": {"pull_n": 444.822, "trust": "secondary"}, # 100 lbf
		"1/0 AWG": {"pull_n": 556.027, "trust": "unverified"}, # 125 lbf
		"2/0 AWG": {"pull_n": 667.233, "trust": "unverified"}, # 150 lbf
		"3/0 AWG": {"pull_n": 778.438, "trust": "unverified"}, # 175 lbf
		"4/0 AWG": {"pull_n": 1000.849, "trust": "unverified"}, # 225 lbf
	},
	"workmanship": {
		"26 AWG": {"pull_n": 13.344, "trust": "secondary"}, # 3 lbf
		"24 AWG": {"pull_n": 22.241, "trust": "secondary"}, # 5 lbf
		"22 AWG": {"pull_n": 35.585, "trust": "secondary"}, # 8 lbf
		"20 AWG": {"pull_n": 57.826, "trust": "secondary"}, # 13 lbf
		"18 AWG": {"pull_n": 88.964, "trust": "secondary"}, # 20 lbf
		"16 AWG": {"pull_n": 133.446, "trust": "secondary"}, # 30 lbf
		"14 AWG": {"pull_n": 222.411, "trust": "secondary"}, # 50 lbf
		"12 AWG": {"pull_n": 311.375, "trust": "secondary"}, # 70 lbf
		"10 AWG": {"pull_n": 355.857, "trust": "secondary"}, # 80 lbf
		"8 AWG": {"pull_n": 400.339, "trust": "secondary"}, # 90 lbf
		"6 AWG": {"pull_n": 444.822, "trust": "secondary"}, # 100 lbf
		"4 AWG": {"pull_n": 622.751, "trust": "secondary"}, # 140 lbf
		"2 AWG": {"pull_n": 800.679, "trust": "secondary"}, # 180 lbf
		"1 AWG": {"pull_n": 889.644, "trust": "unverified"}, # 200 lbf
		"1/0 AWG": {"pull_n": 1112.055, "trust": "secondary"}, # 250 lbf
		"2/0 AWG": {"pull_n": 1334.466, "trust": "secondary"}, # 300 lbf
		"3/0 AWG": {"pull_n": 1556.877, "trust": "unverified"}, # 350 lbf
		"4/0 AWG": {"pull_n": 2001.699, "trust": "unverified"}, # 450 lbf
	},
}

# A conductor goes by the gauge with no more copper, metric ones too. UL 486A has
# no row for these gauges: they have to hold what the next smaller has to.
next_smaller := {"5 AWG": "6 AWG", "3 AWG": "4 AWG"}

row(set, gauge) := limits[set][gauge]

row("workmanship", gauge) := limits.workmanship[next_smaller[gauge]]

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
	gauge := end.gauge
	some set, _ in limits
	not row(set, gauge)
}

applies contains {"subject": id, "set": set} if {
	some id, end in input.ends
	end.terminal in pulled
	some set, _ in limits
	row(set, end.gauge)
}

breach contains {
	"subject": id,
	"set": set,
	"severity": gravest(limit.trust),
	"figures": {"pull_n": end.pull_n, "size": end.size},
	"limit": {"pull_n": limit.pull_n},
} if {
	some id, end in input.ends
	some set, _ in limits
	limit := row(set, end.gauge)
	end.pull_n < limit.pull_n
}

# Enough, but let go too soon to prove anything.
breach contains {
	"subject": id,
	"set": set,
	"severity": "caution",
	"figures": {"pull_n": end.pull_n, "size": end.size, "time_s": end.pull_time_s},
	"limit": {"pull_n": limit.pull_n, "time_s": minute_s},
} if {
	some id, end in input.ends
	end.pull_time_s < minute_s
	some set, _ in limits
	limit := row(set, end.gauge)
}

gravest("secondary") := "warning"

gravest("unverified") := "caution"
