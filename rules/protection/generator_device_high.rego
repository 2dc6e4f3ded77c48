# METADATA
# title: Device too large for the alternator or generator it protects
# description: >-
#   The device never opens on what the machine itself can give. An overloaded machine burns its windings, and its output
#   conductor is protected by nothing against the machine.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/generator-device-high
#   severity: warning
#   subject: devices
#   applies: every fuse or breaker that is the first on the output of an alternator or generator; for 33 CFR 183 not of a self-limiting one
#   needs: [rating_a, machine_a, machine_pct]
#   decides: [machine_limits]
#   says: "rated {rating} for {machine} of {machine_current}, {share} of it, at most {limit.share} allowed"
#   remedy: "Fit a device of at most {limit.rating} in the output of {machine}, near it."
#   mends: [rating]
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.460(b)", asks: "at most 120 % of the machine's maximum rated current at 60 °C, self-limiting machines aside", trust: read, needs: [machine_hot_pct]}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.320(f)", asks: "at most 115 % of the machine's full-load rating", trust: read}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.365(a)", asks: "at most 115 % of the machine's full-load rating", trust: read}
#     - {set: us-inspected, source: 46-cfr-129, clause: "129.380(c)", asks: "at most 115 % of the machine's full-load rating", trust: read}
#   related: [protection/charging-source-unprotected]
#   since: 0.1.0
package driploop.rules.protection.generator_device_high

limits := {"us-federal": {"share_pct": 120}, "us-inspected": {"share_pct": 115}}

excludes contains id if {
	some id, device in input.devices
	device.machine == ""
}

# 46 CFR does not let self-limiting machines go.
excludes contains {"subject": id, "set": "us-federal"} if {
	some id, device in input.devices
	device.machine_limits == true
}

applies contains {"subject": id, "set": "us-inspected"} if {
	some id, device in input.devices
	device.machine != ""
}

applies contains {"subject": id, "set": "us-federal"} if {
	some id, device in input.devices
	device.machine != ""
	device.machine_limits == false
}

# A machine gives less when hot: what is too much for its current when cool is so
# for that at 60 °C all the more.
breach contains {
	"subject": id,
	"set": "us-federal",
	"figures": {"rating_a": device.rating_a, "machine": device.machine, "machine_current_a": device.machine_a, "share_pct": device.machine_pct},
	"limit": {"share_pct": limits["us-federal"].share_pct, "rating_a": device.machine_a * 1.2},
} if {
	some id, device in input.devices
	device.machine_pct > limits["us-federal"].share_pct
}

breach contains {
	"subject": id,
	"set": "us-federal",
	"figures": {"rating_a": device.rating_a, "machine": device.machine, "machine_current_a": device.machine_a, "share_pct": device.machine_hot_pct},
	"limit": {"share_pct": limits["us-federal"].share_pct, "rating_a": device.machine_a * 1.2},
} if {
	some id, device in input.devices
	device.machine_hot_pct > limits["us-federal"].share_pct
}

breach contains {
	"subject": id,
	"set": "us-inspected",
	"figures": {"rating_a": device.rating_a, "machine": device.machine, "machine_current_a": device.machine_a, "share_pct": device.machine_pct},
	"limit": {"share_pct": limits["us-inspected"].share_pct, "rating_a": device.machine_a * 1.15},
} if {
	some id, device in input.devices
	device.machine_pct > limits["us-inspected"].share_pct
}
