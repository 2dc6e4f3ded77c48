# METADATA
# title: Terminal that can slip off or work loose
# description: >-
#   An open spade slides off its screw as soon as that loosens; bare strands spread and break under it. The circuit fails,
#   or the loose end touches something it should not.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/wrong-terminal
#   severity: warning
#   subject: ends
#   applies: every end of a conductor
#   needs: [terminal]
#   says: "{terminal} on {on}"
#   remedy: "Crimp on a ring terminal of the size of the stud, or a captive or flanged spade."
#   mends: ["terminal: ring"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "rings, captive and flanged spades, splices and proven friction terminals; no plain spades, no set screw on the strands", trust: secondary}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.340(k)", asks: "connectors on screw terminal blocks are captive: ring or flanged spade", trust: read}
#   related: [terminations/friction-hold-weak]
#   since: 0.1.0
package driploop.rules.terminations.wrong_terminal

names := {
	"spade": "a plain spade",
	"bare": "bare strands",
	"blade": "a blade terminal",
	"bullet": "a bullet terminal",
	"ferrule": "a ferrule",
	"clamp": "a clamp",
}

# On a screw terminal block anything that is not held by the screw.
not_captive := {"spade", "bare", "blade", "bullet", "ferrule", "clamp"}

breach contains {"subject": id, "set": "us-voluntary", "figures": {"terminal": names[end.terminal], "on": end.on}} if {
	some id, end in input.ends
	end.terminal in {"spade", "bare"}
}

breach contains {"subject": id, "set": "us-inspected", "figures": {"terminal": names[end.terminal], "on": end.on}} if {
	some id, end in input.ends
	end.on_kind == "busbar"
	end.terminal in not_captive
}
