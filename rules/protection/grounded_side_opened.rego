# METADATA
# title: Grounded conductor opened by itself
# description: >-
#   With only the grounded side open, the load is dead and yet live against ground. Whoever works on it can short it with a
#   tool, and current that finds another way back runs it, or corrodes what it passes.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/grounded-side-opened
#   severity: warning
#   subject: components
#   applies: every fuse, breaker and switch
#   needs: [on_grounded]
#   asks: [opens]
#   says: "this {kind} opens a grounded conductor, and not the ungrounded ones with it"
#   remedy: "Put it in the ungrounded conductor, or fit one that opens all conductors of the circuit together."
#   sources:
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.380(b)", asks: "a switch or breaker opens a grounded conductor only together with the ungrounded ones", trust: read}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.365(e)", asks: "the same", trust: read}
#     - {set: us-inspected, source: 46-cfr-111, clause: "111.50-3(g)", asks: "no device in a permanently grounded conductor unless all conductors open together", trust: read}
#     - {set: uk, source: uk-small-vessel-code, clause: "8.2.3", asks: "single-pole switches in the live side only, no fuse in an earthed conductor", trust: read-part}
#   since: 0.1.0
package driploop.rules.protection.grounded_side_opened

applies contains id if {
	some id, component in input.components
	component.opener
}

# A fuse opens nothing together with another.
breach contains {"subject": id, "figures": {"kind": component.kind}, "limit": {}} if {
	some id, component in input.components
	component.on_grounded == true
	component.kind == "fuse"
}

breach contains {"subject": id, "figures": {"kind": component.kind}, "limit": {}} if {
	some id, component in input.components
	component.on_grounded == true
	component.opens != "both"
}

asks contains {"subject": id, "fact": "opens"} if {
	some id, component in input.components
	component.on_grounded == true
	component.kind != "fuse"
}
