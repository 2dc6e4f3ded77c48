package facts_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/facts"
)

// end returns the facts of the end at a lamp in a wet locker.
func end(t *testing.T, lamp, size, entries string) *facts.End {
	t.Helper()
	d := built(t, `
vessel: {system: 12 V}
spaces: {locker: {kind: locker, exposure: wet}}
components: {bar: {kind: busbar}, lamp: {kind: lamp, space: locker`+lamp+`}}
conductors:
  P1: {from: bar.a, to: lamp.pos, role: positive, size: `+size+`, ends: {to: {`+entries+`}}}
`)
	return d.Ends["P1.to"]
}

func TestJointGuardedBySealOrEnclosure(t *testing.T) {
	assert.True(t, *end(t, "", "14 AWG", "cover: heat-shrink-adhesive").GuardedImmersion, "a seal needs no enclosure")
	assert.True(t, *end(t, ", ip: IP44", "14 AWG", "terminal: ring").GuardedSplash, "an enclosure needs no seal")
	assert.False(t, *end(t, ", ip: IP44", "14 AWG", "cover: boot").GuardedJets)
	f := end(t, "", "14 AWG", "cover: none")
	assert.Equal(t, gaps("components.lamp.ip"), f.Open.Of("guarded_splash"))
	f = end(t, "", "14 AWG", "terminal: ring")
	assert.Equal(t, gaps("conductors.P1.ends.to.cover", "components.lamp.ip"), f.Open.Of("guarded_splash"))
}

func TestJointWithoutALoop(t *testing.T) {
	assert.False(t, *end(t, "", "14 AWG", "falls: false").Unlooped)
	assert.False(t, *end(t, "", "14 AWG", "drip_loop: true").Unlooped)
	assert.True(t, *end(t, "", "14 AWG", "falls: true, drip_loop: false").Unlooped)
	assert.Equal(t, gaps("conductors.P1.ends.to.drip_loop"), end(t, "", "14 AWG", "falls: true").Open.Of("unlooped"))
}

func TestSolderInAJoint(t *testing.T) {
	assert.Equal(t, "only", *end(t, "", "14 AWG", "soldered: only, crimp: {tool: ratchet}").Solder)
	assert.Equal(t, "none", *end(t, "", "14 AWG", "crimp: {tool: ratchet}").Solder, "a crimp is a hold of its own")
	assert.Nil(t, end(t, "", "14 AWG", "terminal: ring").Solder)
	// 10 mm²: π/4·d² gives d = 3.568 mm; 7.136 mm is twice that.
	assert.InDelta(t, 2, *end(t, "", "10 mm2", "soldered: battery-lug, solder_length: 7.136 mm").SolderTimes, 1e-3)
}

func TestBarrelsMarkedInTheOtherSystemSayNothing(t *testing.T) {
	f := end(t, "", "14 AWG", "barrel: [16 AWG, 14 AWG]")
	assert.InDelta(t, 1.309, *f.BarrelLeastMM2, 1e-9)
	assert.InDelta(t, 2.081, *f.BarrelMostMM2, 1e-9)
	assert.Equal(t, "16 AWG to 14 AWG", *f.Barrel)
	f = end(t, "", "2.5 mm2", "barrel: [16 AWG, 14 AWG]")
	assert.Nil(t, f.BarrelMostMM2)
	require.Len(t, f.Open.Of("barrel"), 1)
	assert.Equal(t, "conductors.P1.ends.to.barrel", f.Open.Of("barrel")[0].Field)
	assert.Contains(t, f.Open.Of("barrel")[0].Why, "2.5 mm")
}

// Anodic index: tin 0.60, copper 0.35 (MIL-DTL-14072F table VI as republished).
func TestFacesThatTouch(t *testing.T) {
	f := end(t, ", stud_material: copper", "14 AWG", "metal: copper, plating: tin")
	assert.Equal(t, "tin on copper", *f.Faces)
	assert.InDelta(t, 0.25, *f.AnodicGapV, 1e-9)
	f = end(t, ", stud_material: tin-plated-brass", "14 AWG", "plating: tin")
	assert.Zero(t, *f.AnodicGapV, "plating governs, whatever is below it")
	f = end(t, ", stud_material: copper", "14 AWG", "metal: copper")
	assert.Equal(t, gaps("conductors.P1.ends.to.plating"), f.Open.Of("faces"))
}

// twoOnAStud returns the facts of a stud with a thick and a thin conductor on it.
func twoOnAStud(t *testing.T, thick, thin, bar string) *facts.Stud {
	t.Helper()
	d := built(t, `
vessel: {system: 12 V, earthing: negative-ground}
components: {house: {kind: battery}, bar: {kind: busbar`+bar+`}, lamp: {kind: lamp}}
conductors:
  P1: {from: bar.a, to: house.pos, role: positive, size: 2 AWG, ends: {from: {`+thick+`}}}
  P2: {from: bar.a, to: lamp.pos, role: positive, size: 16 AWG, ends: {from: {`+thin+`}}}
  N1: {from: lamp.neg, to: house.neg, role: negative}
`)
	return d.Studs["bar.a"]
}

func TestStackOnAStud(t *testing.T) {
	f := twoOnAStud(t, "order: 2", "order: 1", "")
	assert.True(t, *f.Inverted)
	assert.Equal(t, "P1.from", *f.Upper)
	assert.Equal(t, "P2.from", *f.Lower)
	assert.False(t, *twoOnAStud(t, "order: 1", "order: 2", "").Inverted)
	f = twoOnAStud(t, "order: 1", "terminal: ring", "")
	assert.Nil(t, f.Inverted)
	assert.Equal(t, gaps("conductors.P2.ends.from.order"), f.Open.Of("inverted"))
}

func TestStudUnguarded(t *testing.T) {
	f := twoOnAStud(t, "cover: none", "cover: none", ", enclosure: none")
	assert.False(t, *f.Covered)
	assert.True(t, *f.Unguarded)
	assert.True(t, *twoOnAStud(t, "cover: boot", "cover: none", "").Covered, "one cover over the stack is enough")
	f = twoOnAStud(t, "cover: none", "terminal: ring", ", enclosure: none")
	assert.Equal(t, gaps("conductors.P2.ends.from.cover"), f.Open.Of("unguarded"))
	assert.False(t, *twoOnAStud(t, "cover: none", "cover: none", ", enclosure: fire-retardant").Unguarded)
}

func TestGaugeOfTheTablesWithNoMoreCopper(t *testing.T) {
	for size, want := range map[string]string{
		"14 AWG": "14 AWG", "10 SAE": "10 AWG", "5 AWG": "5 AWG", "7 AWG": "8 AWG", "4/0 AWG": "4/0 AWG",
		"1.5 mm2": "16 AWG", "2.5 mm2": "14 AWG", "35 mm2": "2 AWG", "150 mm2": "4/0 AWG", "0.1 mm2": "finer",
	} {
		assert.Equal(t, want, *end(t, "", size, "terminal: ring").Gauge, size)
	}
}
