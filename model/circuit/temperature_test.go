package circuit

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"driploop/model/figure"
)

// winch is a motor on 8 AWG with 105 °C insulation outside engine spaces: 80 A by
// Table 5, at 30 °C.
func winch(keys string) string {
	return `
		bat: kind: battery, nominal: 12 V, internal_resistance: 4 mohm
		f1: kind: fuse, rating: 100 A, curve: bolt-in
		winch: kind: motor, purpose: winch, ` + keys
}

const winchWay = `
	P1: bat.pos > f1.line, 8 AWG, 200 mm
	P2: f1.load > winch.pos, 8 AWG, 3 m
	N1: winch.neg > bat.neg, 8 AWG, 3 m, negative`

func TestTemperatureWithinTheAmperageIsSteady(t *testing.T) {
	a := analyse(t, boat, winch("current: 40 A, stall: 200 A"), winchWay)
	// 30 + (105 − 30)·(40/80)² = 48.75 °C.
	assert.InDelta(t, 48.75, known(t, a.Conductors["P2"].TemperatureC), 1e-9)
}

// Above the amperage the run time counts, from the temperature under what runs
// all the time: nothing here, so from 30 °C.
func TestTemperatureOfALoadThatPauses(t *testing.T) {
	a := analyse(t, boat, winch("current: 120 A, stall: 300 A, run_time: 30 s"), winchWay)
	short := known(t, a.Conductors["P2"].TemperatureC)
	b := analyse(t, boat, winch("current: 120 A, stall: 300 A, run_time: 10 min"), winchWay)
	long := known(t, b.Conductors["P2"].TemperatureC)
	assert.Greater(t, short, 30.0)
	assert.Greater(t, long, 150.0, "nearly steady at 1.5 times the amperage")
	assert.Less(t, short, long-40)

	c := analyse(t, boat, winch("current: 120 A, stall: 300 A"), winchWay)
	assert.Equal(t, []string{"components.winch.run_time"}, fields(c.Conductors["P2"].TemperatureC.Gaps))
}

func TestTemperatureWithoutBoundIsThatOfMelting(t *testing.T) {
	a := analyse(t, boat, `
		bat: kind: battery, nominal: 12 V, internal_resistance: 1 mohm
		f1: kind: fuse, rating: 400 A, curve: bolt-in
		heater: kind: heater, current: 400 A`, `
		P1: bat.pos > f1.line, 8 AWG, 200 mm
		P2: f1.load > heater.pos, 8 AWG, 300 mm
		N1: heater.neg > bat.neg, 8 AWG, 300 mm, negative`)
	assert.InDelta(t, melting, known(t, a.Conductors["P2"].TemperatureC), 1e-9)
}

func TestStall(t *testing.T) {
	a := analyse(t, boat, winch("current: 40 A, stall: 350 A, protector: none"), winchWay)
	l := a.Loads["winch"]
	assert.InDelta(t, 350, known(t, l.StallA), 1e-9)
	// The gate at 350 % of a bolt-in fuse: 0.3 to 5 s.
	assert.Equal(t, figure.True(), l.StallOpens)
	assert.InDelta(t, 5, known(t, l.StallOpenS), 1e-9)
	assert.InDelta(t, 0.3, known(t, l.StallOpenLeastS), 1e-9)
	assert.Equal(t, "f1", l.StallBy)
	// 8.37 mm² at 350 A from 48.75 °C: adiabatic by k of IEC 60949,
	// 226·√ln(339.5/283.25) = 96.2, t = (96.2·8.366/350)² = 5.3 s at the least.
	assert.Equal(t, figure.True(), l.StallHeats)
	assert.InDelta(t, 5.3, known(t, l.StallHeatS), 0.6)
	assert.NotEmpty(t, l.StallAt)
	hot := known(t, a.Conductors["P2"].StallC)
	assert.Greater(t, hot, known(t, a.Conductors["P2"].TemperatureC))
	assert.InDelta(t, 105, hot, 5, "5 s of 350 A")
}

// At 110 A a 100 A bolt-in fuse need not open: the conductor heats on, unless the
// motor's own protector is known to open.
func TestStallThatNothingClears(t *testing.T) {
	bare := analyse(t, boat, winch("current: 40 A, stall: 110 A, protector: none"), winchWay)
	l := bare.Loads["winch"]
	assert.Equal(t, figure.False(), l.StallOpens)
	assert.False(t, l.StallOpenS.Known)
	assert.Equal(t, figure.True(), l.StallHeats)
	assert.Greater(t, known(t, bare.Conductors["P2"].StallC), 105.0)

	kept := analyse(t, boat, winch("current: 40 A, stall: 110 A, protector: thermal-auto, motor_limit: 10 s"), winchWay)
	assert.Less(t, known(t, kept.Conductors["P2"].StallC), 105.0)

	unsaid := analyse(t, boat, winch("current: 40 A, stall: 110 A"), winchWay)
	assert.Equal(t, []string{"components.winch.protector"}, fields(unsaid.Conductors["P2"].StallC.Gaps))
}

// A conductor that stands the stall for good does so whatever its fuse does: it
// gets as hot as that current makes it in the end, at most.
func TestStallThatAConductorStands(t *testing.T) {
	unlike := func(stall string) ConductorResult {
		parts := strings.ReplaceAll(winch("current: 40 A, stall: "+stall), "bolt-in", "class-t") // no gates are held of it
		return *analyse(t, boat, parts, winchWay).Conductors["P2"]
	}
	// 30 + (105 − 30)·(70/80)² = 87.42 °C.
	assert.InDelta(t, 87.42, known(t, unlike("70 A").StallC), 0.01)
	assert.Contains(t, fields(unlike("350 A").StallC.Gaps), "components.f1.curve_points")
}

func TestStallOfWhatHasNoRotor(t *testing.T) {
	a := analyse(t, boat, launchParts, launchWires)
	assert.False(t, a.Loads["lamp"].StallA.Known)
	assert.Equal(t, "it has no rotor to lock", a.Loads["lamp"].StallA.Gaps[0].Why)
	assert.Equal(t, []string{"components.pump.stall"}, fields(a.Loads["pump"].StallA.Gaps))
}
