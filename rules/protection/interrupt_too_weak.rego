# METADATA
# title: Fuse or breaker that cannot break the fault current
# description: >-
#   A large bank drives thousands of amperes into a short circuit. A device that is not made to break so much can burst, burn
#   on through its arc or weld shut: what should have ended the fault becomes a second fire.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/interrupt-too-weak
#   severity: danger
#   subject: devices
#   applies: every fuse and breaker but those in a grounded return, through which a fault to ground does not flow
#   needs: [interrupt_a]
#   asks: [first, cranking_a, bank_ah, bank_short_a]
#   decides: [ungrounded]
#   says: "made to interrupt {interrupt}, at least {limit.interrupt} asked: {why}"
#   remedy: "Fit a device marked to interrupt at least {limit.interrupt} at the circuit's voltage, or put a fuse that can break it ahead of this one, near the battery."
#   mends: ["interrupt: {interrupt}"]
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "by older editions a capacity by the cold-cranking amperes of the bank, printed for breakers on 12 V and 24 V; by newer ones, above 2,200 A or 500 Ah, the bank's short-circuit rating, or 20 kA if that is above 10 kA", trust: secondary, needs: [lithium, nominal_v]}
#     - {set: workmanship, source: physics, clause: "", asks: "a device can break the greatest fault current where it stands; the maker's internal resistance of the battery settles that, an estimate does not", trust: computed, needs: [fault_a, fault_least_a]}
#   related: [protection/device-voltage-low]
#   since: 0.1.0
package driploop.rules.protection.interrupt_too_weak

# Table V-A of older editions of ABYC E-11, as reported: by total cold-cranking
# amperes and by place. The first device in series with the battery is the main
# one, all behind it are branches. Rows for 32 V are known from memory only and
# are left out.
limits := {"us-voluntary": {
	"first device, up to 650 A of cranking current": {"interrupt_a": 1500},
	"first device, up to 1,100 A of cranking current": {"interrupt_a": 3000},
	"first device, over 1,100 A of cranking current": {"interrupt_a": 5000},
	"branch, up to 650 A of cranking current": {"interrupt_a": 750},
	"branch, up to 1,100 A of cranking current": {"interrupt_a": 1500},
	"branch, over 1,100 A of cranking current": {"interrupt_a": 2500},
	"bank over 10 kA of short-circuit current": {"interrupt_a": 20000},
}}

# There the device ahead of the load breaks a short circuit in it, as it would
# without the second one. protection/grounded-side-opened speaks of that.
excludes contains id if {
	some id, device in input.devices
	device.ungrounded == false
}

applies contains id if {
	some id, device in input.devices
	device.ungrounded == true
}

row(first, cranking_a) := concat(", ", [place(first), band(cranking_a)])

place(first) := "first device" if first

place(first) := "branch" if not first

band(cranking_a) := "up to 650 A of cranking current" if cranking_a <= 650

band(cranking_a) := "up to 1,100 A of cranking current" if {
	cranking_a > 650
	cranking_a <= 1100
}

band(cranking_a) := "over 1,100 A of cranking current" if cranking_a > 1100

# Where the table ends, as reported of newer editions.
table_cranking_a := 2200

table_ah := 500

table_v := 24

# What the table is made for, as far as voltage and cells go.
tabled contains id if {
	some id, device in input.devices
	device.lithium == false
	device.nominal_v <= table_v
}

in_table contains id if {
	some id in tabled
	input.devices[id].bank_ah <= table_ah
	input.devices[id].cranking_a <= table_cranking_a
}

beyond_table contains id if {
	some id, device in input.devices
	device.lithium == true
}

beyond_table contains id if {
	some id, device in input.devices
	device.nominal_v > table_v
}

beyond_table contains id if {
	some id, device in input.devices
	device.bank_ah > table_ah
}

beyond_table contains id if {
	some id, device in input.devices
	device.cranking_a > table_cranking_a
}

# A bank of lithium cells has no cranking rating, and a large one needs none.
asks contains {"subject": id, "set": "us-voluntary", "fact": "bank_ah"} if some id in tabled

asks contains {"subject": id, "set": "us-voluntary", "fact": "cranking_a"} if {
	some id in tabled
	input.devices[id].bank_ah <= table_ah
}

asks contains {"subject": id, "set": "us-voluntary", "fact": "first"} if some id in in_table

asks contains {"subject": id, "set": "us-voluntary", "fact": "bank_short_a"} if some id in beyond_table

# The fault current is a range as long as no internal resistance is recorded: then
# only a device below its lower end is surely too weak, and none is surely strong
# enough.
asks contains {"subject": id, "set": "workmanship", "fact": "bank_short_a"} if some id, _ in input.devices

breach contains {
	"subject": id,
	"set": "us-voluntary",
	"figures": {"interrupt_a": device.interrupt_a, "why": row(device.first, device.cranking_a)},
	"limit": {"interrupt_a": limits["us-voluntary"][row(device.first, device.cranking_a)].interrupt_a},
} if {
	some id, device in input.devices
	id in in_table
	device.interrupt_a < limits["us-voluntary"][row(device.first, device.cranking_a)].interrupt_a
}

breach contains {
	"subject": id,
	"set": "us-voluntary",
	"figures": {"interrupt_a": device.interrupt_a, "why": "the bank is beyond the table by cranking amperes, and this is its short-circuit current"},
	"limit": {"interrupt_a": device.bank_short_a},
} if {
	some id, device in input.devices
	id in beyond_table
	device.bank_short_a <= 10000
	device.interrupt_a < device.bank_short_a
}

breach contains {
	"subject": id,
	"set": "us-voluntary",
	"figures": {"interrupt_a": device.interrupt_a, "why": "the bank is beyond the table by cranking amperes, and gives over 10 kA into a short circuit"},
	"limit": {"interrupt_a": limits["us-voluntary"]["bank over 10 kA of short-circuit current"].interrupt_a},
} if {
	some id, device in input.devices
	id in beyond_table
	device.bank_short_a > 10000
	device.interrupt_a < limits["us-voluntary"]["bank over 10 kA of short-circuit current"].interrupt_a
}

breach contains {
	"subject": id,
	"set": "workmanship",
	"figures": {"interrupt_a": device.interrupt_a, "why": "no fault behind it draws less, whatever the battery"},
	"limit": {"interrupt_a": device.fault_least_a},
} if {
	some id, device in input.devices
	device.interrupt_a < device.fault_least_a
}

breach contains {
	"subject": id,
	"set": "workmanship",
	"figures": {"interrupt_a": device.interrupt_a, "why": "the greatest fault current where it stands"},
	"limit": {"interrupt_a": device.fault_a},
} if {
	some id, device in input.devices
	device.bank_short_a > 0
	device.interrupt_a < device.fault_a
}
