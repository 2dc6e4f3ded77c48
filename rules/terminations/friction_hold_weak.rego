# METADATA
# title: Push-on terminal that was not proven to hold
# description: >-
#   A push-on terminal that has lost its spring slides off by the weight of its wire. What it fed stops, and the live end
#   hangs free.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/friction-hold-weak
#   severity: notice
#   subject: ends
#   applies: every blade and bullet terminal
#   needs: [pull_held_n]
#   decides: [terminal]
#   says: "held {pull}, at least {limit.pull} for a minute wanted"
#   remedy: "Replace the terminal, or use a ring or captive spade; pull each push-on terminal with {limit.pull} for a minute."
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "friction terminals only if they hold 6 lb for one minute", trust: secondary}
#   related: [terminations/wrong-terminal]
#   since: 0.1.0
package driploop.rules.terminations.friction_hold_weak

limits := {"us-voluntary": {"pull_n": 26.689}} # 6 lbf

excludes contains id if {
	some id, end in input.ends
	kind := end.terminal
	not kind in {"blade", "bullet"}
}

applies contains id if {
	some id, end in input.ends
	end.terminal in {"blade", "bullet"}
}

breach contains {
	"subject": id,
	"figures": {"pull_n": end.pull_held_n},
	"limit": {"pull_n": limits["us-voluntary"].pull_n},
} if {
	some id, end in input.ends
	end.pull_held_n < limits["us-voluntary"].pull_n
}
