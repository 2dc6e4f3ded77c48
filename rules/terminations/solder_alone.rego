# METADATA
# title: Joint held by solder alone
# description: >-
#   Solder creeps under load and melts when the joint heats: it lets go just when a fault draws the most current. Behind
#   it the strands turn stiff and break.
# schemas:
#   - input: schema.facts
# custom:
#   id: terminations/solder-alone
#   severity: warning
#   subject: ends
#   applies: every end of a conductor
#   needs: [solder]
#   asks: [solder_times]
#   says: "{hold}"
#   remedy: "Crimp the terminal with the tool made for it; solder may be added, but not be the only hold."
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "solder is not the only mechanical hold; battery lugs excepted with a contact length of 1.5 conductor diameters", trust: secondary}
#   since: 0.1.0
package driploop.rules.terminations.solder_alone

# Contact length over the diameter of the conductor.
limits := {"us-voluntary": {"in a battery lug": {"contact": 1.5}}}

asks contains {"subject": id, "fact": "solder_times"} if {
	some id, end in input.ends
	end.solder == "battery-lug"
}

breach contains {"subject": id, "figures": {"hold": "solder alone holds the conductor"}} if {
	some id, end in input.ends
	end.solder == "only"
}

breach contains {
	"subject": id,
	"figures": {"hold": "the solder in the battery lug is shorter than 1.5 conductor diameters", "contact": end.solder_times},
	"limit": {"contact": limits["us-voluntary"]["in a battery lug"].contact},
} if {
	some id, end in input.ends
	end.solder == "battery-lug"
	end.solder_times < limits["us-voluntary"]["in a battery lug"].contact
}
