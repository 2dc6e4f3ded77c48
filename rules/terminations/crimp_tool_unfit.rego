# METADATA
# title: Crimp made with the wrong tool
# description: >-
#   A tool that lets go before it has closed, or a die of another make, leaves some crimps loose and cuts the strands of
#   others. They look alike.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/crimp-tool-unfit
#   severity: caution
#   subject: ends
#   applies: every crimped terminal
#   needs: [crimp_tool, calibrated, matching]
#   decides: [terminal]
#   says: "{fault}"
#   remedy: "Crimp again with a ratchet or hydraulic tool that is in calibration, with the die made for the terminal."
#   mends: ["crimp.tool: ratchet", "crimp.calibrated: true", "crimp.matching: true"]
#   sources:
#     - {set: workmanship, source: ac-43-13-1b, clause: "11-178", asks: "crimps are made with a calibrated ratchet tool of the right size", trust: read}
#   related: [terminations/pull-too-low]
#   since: 0.1.0
package driploop.rules.terminations.crimp_tool_unfit

crimped := {"ring", "captive-spade", "flanged-spade", "spade", "blade", "bullet", "butt", "ferrule"}

unfit := {"plain": "crimped with a plain tool, which opens at any pressure", "hammer": "crimped with a hammer"}

excludes contains id if {
	some id, end in input.ends
	kind := end.terminal
	not kind in crimped
}

applies contains id if {
	some id, end in input.ends
	end.terminal in crimped
}

breach contains {"subject": id, "figures": {"fault": unfit[end.crimp_tool]}} if {
	some id, end in input.ends
}

breach contains {"subject": id, "figures": {"fault": "the crimping tool is out of calibration"}} if {
	some id, end in input.ends
	end.calibrated == false
}

breach contains {"subject": id, "figures": {"fault": "die and terminal do not belong together"}} if {
	some id, end in input.ends
	end.matching == false
}
