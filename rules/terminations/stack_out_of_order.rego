# METADATA
# title: Larger terminal above a smaller one
# description: >-
#   The heavy current of the larger conductor then passes through the small terminal below it, or through the stud. Both
#   heat, and the stack works loose.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/stack-out-of-order
#   severity: caution
#   subject: studs
#   applies: every stud with two conductors or more
#   needs: [inverted]
#   asks: [upper, lower]
#   says: "{upper} lies above {lower}, which is the smaller conductor"
#   remedy: "Take the stack apart and lay the largest terminal at the foot, the smallest on top; isolate before work."
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "on a stud the largest terminal first, then in falling order", trust: secondary}
#   related: [terminations/stud-crowded]
#   since: 0.1.0
package driploop.rules.terminations.stack_out_of_order

applies contains id if {
	some id, stud in input.studs
	stud.landed > 1
}

asks contains {"subject": id, "fact": fact} if {
	some id, stud in input.studs
	stud.inverted
	some fact in ["upper", "lower"]
}

breach contains {"subject": id, "figures": {"upper": stud.upper, "lower": stud.lower}} if {
	some id, stud in input.studs
	stud.inverted
}
