package madeup

import "strings"

// The parts of a made-up job, with all that rules ask of them. The values are
// those of the invented helm of testdata/records/corpus/helm-rewire.yaml, which
// are argued there.

const space = `
kind: locker
exposure: dry
ambient: 30 degC
fuel_vapour: none
petrol_source: []
exhaust: []
fuel_line: false
machinery: false
open_to_air: false
volume: 0.9 m3
bilge_water: 0 mm`

const battery = `
kind: battery
space: locker
label: House battery
nominal: 12 V
chemistry: agm
capacity: 220 Ah
cranking: 600 A
internal_resistance: 6 mohm
units: 1
weight: 62 lb
movement: 5 mm
test_force: 130 lbf
test_time: 60 s
pulls: 5
terminals_covered: true
ungrounded_covered: true
vented_to: outside
vent_opening: 12 in2
tray: liquid-tight
above_bilge: 350 mm
in_splash: false
fuel_above: none
fuel_metal_near: 1 m
fuel_shield: false
posts: {pos: {stud: 5/16 in, material: stainless-316, cover: boot}, neg: {stud: 5/16 in, material: stainless-316, cover: boot}}`

const device = `
ip: IP20
metal_case: false
bonded: false
marked: true
enclosure: fire-retardant
entry: side
kind: breaker
space: locker
label: House
rating: 80 A
voltage: 48 V
interrupt: 5 kA
curve: thermal-magnetic
trip_free: true
reset: manual
poles: 1
opens: ungrounded
duty: main
resistance: 0.75 mohm
readily_accessible: true
posts: {line: {stud: 5/16 in, material: stainless-316, cover: cap}, load: {stud: 5/16 in, material: stainless-316, cover: cap}}`

const isolator = `
ip: IP20
metal_case: false
bonded: false
marked: true
enclosure: fire-retardant
entry: side
kind: switch
space: locker
label: House
duty: battery-disconnect
continuous: 200 A
intermittent: 400 A
voltage: 48 V
resistance: 0.1 mohm
opens: ungrounded
poles: 1
reach: 500 mm
readily_accessible: true
interlocked: false
deck_switch: false
guarded: true
posts: {in: {stud: 5/16 in, material: stainless-316, cover: cap}, out: {stud: 5/16 in, material: stainless-316, cover: cap}}`

const bar = `
ip: IP65
marked: true
enclosure: fire-retardant
entry: side
kind: busbar
space: helm
label: Panel feed
rating: 100 A
voltage: 48 V`

const load = `
ip: IP65
metal_case: false
bonded: false
marked: true
enclosure: fire-retardant
entry: side
kind: electronics
space: helm
label: Load
purpose: instrument
nominal: 12 V
current: 1 A
load_kind: constant-current
starting: 1.5 A
start_time: 10 ms
run_time: 10 h
continuously: true
reversible: false
drop_class: other
min_voltage: 9 V
local_disconnect: lockable
factory_lead: 0 mm
posts: {pos: {stud: "#10", material: stainless-316, cover: cap}, neg: {stud: "#10", material: stainless-316, cover: cap}}`

const wire = `
from: house.pos
to: main.line
role: positive
size: 4 AWG
colour: red
insulation: 105 degC
compound: pvc
oil_resistant: true
material: copper
strands: 420
class: type-3
tinned: true
standard: ul-1426
diameter: 0.4 in
length: 150 mm
sheath: none
duty: normal
in_housing: false
pigtail: false
twisted: false
compass_distance: 2.4 m
spacing: 0.5 in
bend_radius: 5 in
splices: 0
first_support: 75 mm
labelled: both`

const stretch = `{space: locker, length: 150 mm, in: open, bundle: none, support: 150 mm, support_kind: cushioned-clamp, bilge: above, with_ac: none, walkway: false}`

const end = `
terminal: ring
hole: 5/16 in
stud: 5/16 in
order: 1
barrel: [4 AWG, 4 AWG]
crimp: {tool: ratchet, calibrated: true, matching: true, pull: 742 lbf, pull_time: 60 s}
soldered: none
torque: 100 lbf.in
torque_range: [85 lbf.in, 115 lbf.in]
cover: heat-shrink-adhesive
plating: tin
metal: copper
washer_in_path: false
nut: lock-nut
falls: false
drip_loop: false
slack: two
damaged_strands: 0
broken_strands: 0`

// pair is one entry of a part.
type pair struct{ key, value string }

// entries is a part of a record, in the order that it is written.
type entries []pair

// of reads the lines of a part as it stands above.
func of(text string) (all entries) {
	for line := range strings.Lines(strings.TrimPrefix(text, "\n")) {
		key, value, _ := strings.Cut(strings.TrimSuffix(line, "\n"), ": ")
		all = append(all, pair{key, value})
	}
	return all
}

// with returns the part with other values, given as key and value in turn.
func (e entries) with(values ...string) entries {
	out := append(entries{}, e...)
	for i := 0; i < len(values); i += 2 {
		at := -1
		for j := range out {
			if out[j].key == values[i] {
				at = j
			}
		}
		if at < 0 {
			out = append(out, pair{values[i], values[i+1]})
		} else {
			out[at].value = values[i+1]
		}
	}
	return out
}
