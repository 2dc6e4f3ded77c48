# METADATA
# title: Twist-on connector in a joint
# description: >-
#   The coil of a twist-on connector cuts fine strands and lets go under vibration. Its open end draws in damp air, and
#   the joint corrodes and heats.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/twist-on-connector
#   severity: warning
#   subject: ends
#   applies: every end of a conductor
#   needs: [terminal]
#   says: "a twist-on connector joins the conductor at {on}"
#   remedy: "Cut it off and crimp on a butt splice with adhesive-lined heat shrink, or land both conductors on a terminal block."
#   mends: ["terminal: butt"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "no twist-on connectors", trust: secondary}
#     - {set: us-inspected, source: 46-cfr-143, clause: "143.575(a)(4)", asks: "twist-on connectors only enclosed with the cap secured, not for joints, splices or extensions", trust: read}
#     - {set: us-inspected, source: 46-cfr-129, clause: "129.340(i)", asks: "no twist-on connectors", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.340(i)", asks: "twist-on connectors only enclosed with the cap secured, not for joints, splices or extensions", trust: read}
#   since: 0.1.0
package driploop.rules.terminations.twist_on_connector

breach contains {"subject": id, "figures": {"on": end.on}} if {
	some id, end in input.ends
	end.terminal == "twist-on"
}
