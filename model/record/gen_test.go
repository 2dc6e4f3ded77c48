package record

import (
	"fmt"
	"strings"
)

// recordOf returns a valid record of n conductors as a technician would write
// it: one fused circuit for each two.
func recordOf(n int) []byte {
	var b strings.Builder
	b.WriteString(`driploop: 1
job: {number: T-1, title: Generated, completed: 2026-06-18}
vessel: {name: Teasel, length: 9.4 m, hull: frp, propulsion: diesel-inboard, system: 12 V}
practice: [us-federal, workmanship]
spaces:
  locker: {kind: locker, exposure: damp, ambient: 30 degC, fuel_vapour: none}
  bow: {kind: locker, exposure: wet, ambient: 30 degC}
components:
  house: {kind: battery, space: locker, chemistry: agm, nominal: 12 V, capacity: 220 Ah, cranking: 1150 A}
  pos-bus: {kind: busbar, space: locker, rating: 300 A, stud: M8}
  neg-bus: {kind: busbar, space: locker, rating: 300 A, stud: M8}
`)
	for i := range n / 2 {
		fmt.Fprintf(&b, `  fuse-%d: {kind: fuse, space: locker, rating: 25 A, voltage: 32 V, interrupt: 3 kA, curve: blade-c}
  pump-%d: {kind: pump, space: bow, current: 15 A, stall: 38 A, drop_class: other, purpose: bilge-pump}
`, i, i)
	}
	b.WriteString("conductors:\n")
	for i := range n {
		from, to, role, colour := fmt.Sprintf("fuse-%d.load", i/2), fmt.Sprintf("pump-%d.pos", i/2), "positive", "red"
		if i%2 == 1 {
			from, to, role, colour = fmt.Sprintf("pump-%d.neg", i/2), fmt.Sprintf("neg-bus.s%d", i), "negative", "yellow"
		}
		fmt.Fprintf(&b, `  W%d:
    from: %s
    to: %s
    role: %s
    size: 10 AWG
    colour: %s
    insulation: 105 degC
    standard: ul-1426
    length: 6.4 m
    route:
      - {space: locker, length: 2.4 m, in: open, bundle: B1, support: 150 mm}
      - {space: bow, length: 4 m, in: conduit, bundle: B1, support: 400 mm}
    ends:
      from: {terminal: ring, hole: M5, stud: M5, order: 1, crimp: {tool: ratchet, pull: 350 N}, torque: 2 N.m, cover: boot}
      to: {terminal: butt, crimp: {tool: ratchet}, cover: heat-shrink-adhesive}
`, i, from, to, role, colour)
	}
	return []byte(b.String())
}
