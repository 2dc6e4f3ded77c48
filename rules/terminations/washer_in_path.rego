# METADATA
# title: Washer between the faces that carry current
# description: >-
#   Current has to pass through the washer, which is of steel or dirty, or loose. The joint heats at a load that it would
#   carry well without it.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/washer-in-path
#   severity: caution
#   subject: ends
#   applies: every terminal held by a screw or nut
#   needs: [washer_in_path]
#   decides: [terminal]
#   says: "a washer lies between the terminal and what it presses on, on {on}"
#   remedy: "Lay the terminal straight on the face that carries the current, washers only between it and the nut; isolate before work."
#   mends: ["washer_in_path: false"]
#   sources:
#     - {set: workmanship, source: faa-powerplant, clause: "", asks: "no washer in the path of the current between copper lugs", trust: secondary}
#   since: 0.1.0
package driploop.rules.terminations.washer_in_path

bolted := {"ring", "captive-spade", "flanged-spade", "solder-lug"}

excludes contains id if {
	some id, end in input.ends
	kind := end.terminal
	not kind in bolted
}

applies contains id if {
	some id, end in input.ends
	end.terminal in bolted
}

breach contains {"subject": id, "figures": {"on": end.on}} if {
	some id, end in input.ends
	end.washer_in_path
}
