# METADATA
# title: More than one connection to ground
# description: >-
#   With two connections between DC negative and ground, part of the return current flows through whatever lies between them:
#   hull, shaft, fittings. They corrode, and a fault can flow where no fuse sees it.
# schemas:
#   - input: schema.facts
# custom:
#   id: grounding/earthed-twice
#   severity: warning
#   subject: vessel
#   applies: every vessel
#   needs: [earth_links]
#   says: "{links} connections between DC negative and ground"
#   remedy: "Keep one connection, at the main negative point, and take away the others."
#   sources:
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.376(a)", asks: "a grounded system has one connection to ground", trust: read}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.360(b)", asks: "one ground connection only", trust: read}
#   related: [grounding/negatives-apart]
#   since: 0.1.0
package driploop.rules.grounding.earthed_twice

# 46 CFR 183.376(a), 28.360(b): one connection.
limits := {"us-inspected": {"links": 1}}

breach contains {"subject": "vessel", "figures": {"links": links}, "limit": limits["us-inspected"]} if {
	some links in [input.vessel.earth_links, input.vessel.earth_links_seen]
	links > limits["us-inspected"].links
}

# What the conductors show stands even where the number was not recorded.
breach contains {"subject": "vessel", "figures": {"links": input.vessel.earth_links_seen}, "limit": limits["us-inspected"]} if {
	input.vessel.earth_links_seen > limits["us-inspected"].links
}
