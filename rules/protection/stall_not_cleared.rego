# METADATA
# title: Stalled motor that nothing cuts off in time
# description: >-
#   A jammed windlass, thruster or pump draws a few times its current for as long as somebody holds the switch, or for good if a
#   float holds it. The motor burns, or its leads do, and a fire starts in a locker.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/stall-not-cleared
#   severity: danger
#   subject: loads
#   applies: every motor, pump, blower and refrigerator but cranking motors, whose feeds every document lets go unprotected
#   needs: [stall_cut, stall_heats]
#   asks: [stall_cut_s, stall_heat_s, protector, motor_limit_s]
#   says: "with its rotor locked, {what}"
#   remedy: "Use a motor with a thermal protector, a device that opens sooner at the stall current, or larger conductors."
#   mends: [rating, size]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "no fire hazard if a motor circuit stays energised for seven hours under any overload, locked rotor included", trust: secondary}
#     - {set: workmanship, source: physics, clause: "", asks: "a device or the motor's protector opens before a conductor passes its rating, or the motor the time that it stands", trust: computed}
#   related: [protection/motor-device-high, conductors/overheats]
#   since: 0.1.0
package driploop.rules.protection.stall_not_cleared

applies contains id if {
	some id, load in input.loads
	load.rotor
	not load.cranks
}

breach contains {"subject": id, "figures": {"what": "no device surely opens, and it has no protector of its own"}, "limit": {}} if {
	some id, load in input.loads
	load.stall_cut == false
}

# What is cut off, and could heat a conductor first.
asks contains {"subject": id, "fact": fact} if {
	some id, load in input.loads
	load.stall_cut == true
	load.stall_heats == true
	some fact in ["stall_cut_s", "stall_heat_s"]
}

breach contains {
	"subject": id,
	"figures": {"what": concat(" ", ["conductor", load.stall_at, "passes the rating of its insulation before it is cut off"]), "time_s": load.stall_cut_s},
	"limit": {"time_s": load.stall_heat_s},
} if {
	some id, load in input.loads
	load.stall_cut == true
	load.stall_heats == true
	load.stall_cut_s > load.stall_heat_s
}

# A protector knows how long its motor stands; without one the record has to.
asks contains {"subject": id, "fact": "protector"} if {
	some id, load in input.loads
	load.stall_cut == true
}

asks contains {"subject": id, "fact": fact} if {
	some id, load in input.loads
	load.stall_cut == true
	load.protector == "none"
	some fact in ["stall_cut_s", "motor_limit_s"]
}

breach contains {
	"subject": id,
	"figures": {"what": "the device may open later than the motor stands", "time_s": load.stall_cut_s},
	"limit": {"time_s": load.motor_limit_s},
} if {
	some id, load in input.loads
	load.stall_cut == true
	load.protector == "none"
	load.stall_cut_s > load.motor_limit_s
}
