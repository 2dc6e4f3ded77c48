package circuit

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// selector is two batteries on a selector switch, a link switch between two
// busbars, and a winch that runs both ways.
const selectorParts = `
	b1: kind: battery, nominal: 12 V, internal_resistance: 5 mohm
	b2: kind: battery, nominal: 12 V, internal_resistance: 5 mohm
	sel: kind: switch, duty: battery-selector, links: [{between: [p1, c], when: one}, {between: [p2, c], when: two}, {between: [p1, c], when: both}, {between: [p2, c], when: both}]
	cut: kind: switch
	bus: kind: busbar
	neg: kind: busbar
	winch: kind: motor, purpose: winch, current: 40 A, stall: 120 A, starting: 90 A
	lamp: kind: lamp, current: 2 A, starting: 10 A`

const selectorWires = `
	P1: b1.pos > sel.p1, 4 AWG, 500 mm
	P2: b2.pos > sel.p2, 4 AWG, 500 mm
	P3: sel.c > bus.a, 4 AWG, 500 mm
	P4: bus.b > winch.pos, 6 AWG, 3 m
	P5: bus.c > cut.in, 14 AWG, 300 mm
	P6: cut.out > lamp.pos, 14 AWG, 3 m
	N1: b1.neg > neg.a, 4 AWG, 500 mm, negative
	N2: b2.neg > neg.b, 4 AWG, 500 mm, negative
	N4: winch.neg > neg.c, 6 AWG, 3 m, negative
	N6: lamp.neg > neg.d, 14 AWG, 3 m, negative`

func declared(t *testing.T, keys string) (*Analysis, *CaseResult) {
	t.Helper()
	a := Analyse(read(t, sketch(boat, selectorParts, selectorWires)+"cases:\n  mine: {"+keys+"}\n"))
	for _, c := range a.Cases.All() {
		if c.Name == "mine" {
			require.Equal(t, Declared, c.Kind)
			return a, c
		}
	}
	t.Fatal("the declared case is missing")
	return nil, nil
}

func TestDeclaredPosition(t *testing.T) {
	_, one := declared(t, "loads: [winch], when: [one]")
	assert.InDelta(t, 40, one.Currents["P1"], 1e-9)
	assert.InDelta(t, 0, one.Currents["P2"], 1e-9)
	_, two := declared(t, "loads: [winch], when: [two]")
	assert.InDelta(t, 40, two.Currents["P2"], 1e-9)
	_, both := declared(t, "loads: [winch], when: [both]")
	assert.InDelta(t, 20, both.Currents["P1"], 1e-9)
	assert.InDelta(t, 20, both.Currents["P2"], 1e-9)
}

func TestDeclaredOpenSwitch(t *testing.T) {
	_, c := declared(t, "loads: [winch, lamp], open: [cut], when: [one]")
	assert.InDelta(t, 40, c.Currents["P3"], 1e-9)
	assert.InDelta(t, 0, c.Currents["P6"], 1e-9)
}

func TestDeclaredStateAndSource(t *testing.T) {
	_, full := declared(t, "loads: [winch], when: [one], state: stalled")
	assert.InDelta(t, 120, full.Currents["P4"], 1e-9)
	_, low := declared(t, "loads: [winch], when: [one], state: stalled, source: low")
	assert.InDelta(t, 0.9, full.Voltages["b1.pos"]-low.Voltages["b1.pos"], 1e-9, "12.6 V and 11.7 V")
	_, start := declared(t, "loads: [winch, lamp], when: [one], state: starting")
	assert.InDelta(t, 100, start.Currents["P3"], 1e-9, "90 A and 10 A")
	assert.Empty(t, start.Temperatures, "it does not last")
}

// Whatever position leads to the most counts: each battery alone carries all of
// it.
func TestEveryPositionOfASelectorIsTried(t *testing.T) {
	a, _ := declared(t, "loads: [lamp]")
	assert.InDelta(t, 42, known(t, a.Conductors["P1"].Current), 1e-9)
	assert.InDelta(t, 42, known(t, a.Conductors["P2"].Current), 1e-9)
	assert.Equal(t, "all loads, one", a.Conductors["P1"].CurrentCase)
	// Through the selector each battery reaches the other's conductor: with both.
	assert.Len(t, a.Conductors["P1"].Feeds, 2)
	assert.Equal(t, "sel", a.Batteries["b1"].Disconnect)
}

func TestCaseTemperatures(t *testing.T) {
	_, c := declared(t, "loads: [winch], when: [one]")
	// 6 AWG of 105 °C insulation: 120 A by Table 5; 30 + 75·(40/120)² = 38.33 °C.
	assert.InDelta(t, 30+75.0/9, c.Temperatures["P4"], 1e-9)
	assert.InDelta(t, 30, c.Temperatures["P6"], 1e-9)
}
