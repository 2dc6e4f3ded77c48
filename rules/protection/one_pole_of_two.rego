# METADATA
# title: Insulated system with one side unprotected
# description: >-
#   In a system that is insulated from ground either side can be the one that faults. Two faults, one on each side, make a
#   short circuit that the device on the other side never sees.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/one-pole-of-two
#   severity: danger
#   subject: loads
#   applies: every load of a system that is insulated from ground
#   needs: [pos_protected, neg_protected]
#   decides: [vessel.earthing]
#   says: "protected on its {protected} side alone; the {bare} side has no fuse or breaker"
#   remedy: "Fit a breaker that opens both sides together, or a fuse in each."
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.455(a)", asks: "a fuse or breaker in each ungrounded current-carrying conductor; here both are", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.380(a)", asks: "protection in each ungrounded conductor", trust: read}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.365(d)", asks: "breakers and switches open all ungrounded conductors together", trust: read}
#   related: [protection/unprotected]
#   since: 0.1.0
package driploop.rules.protection.one_pole_of_two

excludes contains id if {
	some id, _ in input.loads
	earthing := input.vessel.earthing
	earthing != "insulated"
}

applies contains id if {
	some id, _ in input.loads
	input.vessel.earthing == "insulated"
}

breach contains {"subject": id, "figures": {"protected": "positive", "bare": "negative"}, "limit": {}} if {
	some id, load in input.loads
	load.pos_protected == true
	load.neg_protected == false
}

breach contains {"subject": id, "figures": {"protected": "negative", "bare": "positive"}, "limit": {}} if {
	some id, load in input.loads
	load.pos_protected == false
	load.neg_protected == true
}
