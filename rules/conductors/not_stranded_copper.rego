# METADATA
# title: Conductor of solid wire or of aluminium
# description: >-
#   Solid wire work-hardens with every movement of the boat and breaks inside its insulation. Aluminium corrodes at every
#   joint, creeps out from under screws and then burns there.
# schemas:
#   - input: schema.facts
# custom:
#   id: conductors/not-stranded-copper
#   severity: danger
#   subject: conductors
#   applies: every conductor but bonding ones; for 33 CFR 183 not what 183.425(g) exempts
#   needs: [material]
#   asks: [stranded, exposed_mm, current_a]
#   says: "{what}"
#   remedy: "Replace it by stranded copper, tinned where it is damp."
#   mends: ["material: copper", "class: type-3"]
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.425(a)", asks: "conductors are insulated, stranded and of copper; 183.425(g) exempts some", trust: read}
#     - {set: us-inspected, source: 46-cfr-183, clause: "183.340(b)(1)", asks: "stranded copper", trust: read}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.350(b)", asks: "no current-carrying parts of aluminium", trust: read}
#     - {set: us-inspected, source: 46-cfr-169, clause: "169.672(b)", asks: "stranded on new vessels", trust: read}
#     - {set: us-inspected, source: 46-cfr-28, clause: "28.370(a)", asks: "insulated stranded copper", trust: read}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "no solid wire", trust: secondary}
#     - {set: international, source: iso-10133, clause: "7.1", asks: "insulated stranded copper", trust: secondary}
#   related: [conductors/too-few-strands]
#   since: 0.1.0
package driploop.rules.conductors.not_stranded_copper

# 33 CFR 183.425(g): electronic circuits are exempt below one ampere, pigtails
# below 7 in of exposed length.
exempt := {"communication", "navigation", "resistance", "ignition-secondary", "cranking"}

least_a := 1

pigtail_mm := 177.8

others := ["us-inspected", "us-voluntary", "international"]

applies contains {"subject": id, "set": set} if {
	some id, conductor in input.conductors
	conductor.role != "bonding"
	some set in others
}

applies contains {"subject": id, "set": "us-federal"} if {
	some id, conductor in input.conductors
	conductor.role != "bonding"
	not conductor.duty in exempt
	not conductor.in_housing
}

# What is wrong for any set.
poor contains id if {
	some id, conductor in input.conductors
	conductor.stranded == false
}

poor contains id if {
	some id, conductor in input.conductors
	conductor.material == "aluminium"
}

long contains id if {
	some id, conductor in input.conductors
	not conductor.pigtail
}

long contains id if {
	some id, conductor in input.conductors
	conductor.exposed_mm >= pigtail_mm
}

carrying contains id if {
	some id, conductor in input.conductors
	conductor.duty != "electronic"
}

carrying contains id if {
	some id, conductor in input.conductors
	conductor.current_a >= least_a
}

asks contains {"subject": id, "fact": "stranded"} if some id, _ in input.conductors

asks contains {"subject": id, "set": "us-federal", "fact": "exposed_mm"} if {
	some id in poor
	input.conductors[id].pigtail
}

asks contains {"subject": id, "set": "us-federal", "fact": "current_a"} if {
	some id in poor
	input.conductors[id].duty == "electronic"
}

breach contains {"subject": id, "set": "us-federal", "figures": {"what": "a conductor of solid wire"}, "limit": {}} if {
	some id, conductor in input.conductors
	conductor.stranded == false
	id in long
	id in carrying
}

breach contains {"subject": id, "set": "us-federal", "figures": {"what": "a conductor of aluminium"}, "limit": {}} if {
	some id, conductor in input.conductors
	conductor.material == "aluminium"
	id in long
	id in carrying
}

breach contains {"subject": id, "set": set, "clause": clause, "figures": {"what": "a conductor of solid wire"}, "limit": {}} if {
	some id, conductor in input.conductors
	conductor.stranded == false
	some set, clause in {"us-inspected": "183.340(b)(1)", "us-voluntary": "", "international": "7.1"}
}

breach contains {"subject": id, "set": set, "clause": clause, "figures": {"what": "a conductor of aluminium"}, "limit": {}} if {
	some id, conductor in input.conductors
	conductor.material == "aluminium"
	some set, clause in {"us-inspected": "28.350(b)", "international": "7.1"}
}
