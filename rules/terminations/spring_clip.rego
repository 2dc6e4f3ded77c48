# METADATA
# title: Battery connection held by a spring
# description: >-
#   A spring clip sparks when it shifts or is knocked off, next to a battery that gives off explosive gas. It can also
#   drop on the other terminal.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/spring-clip
#   severity: warning
#   subject: ends
#   applies: every end of a conductor on a battery
#   needs: [terminal]
#   says: "a spring clip holds the conductor on {on}"
#   remedy: "Fit a bolted battery terminal or a ring on the stud; disconnect the ungrounded terminal last on, first off."
#   mends: ["terminal: ring"]
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.420(g)", asks: "a battery connector does not depend on spring tension for its hold", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.350(d)", asks: "permanent connectors; no spring clips or temporary clamps", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.668(e)", asks: "permanent connectors; no spring clips or temporary clamps", trust: read}
#   since: 0.1.0
package driploop.rules.terminations.spring_clip

applies contains id if {
	some id, end in input.ends
	end.on_kind == "battery"
}

breach contains {"subject": id, "figures": {"on": end.on}} if {
	some id, end in input.ends
	end.terminal == "spring-clip"
}
