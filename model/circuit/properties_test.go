package circuit

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"driploop/model/figure"
)

// sameFigure compares two figures: known alike, and to nine digits.
func sameFigure(t require.TestingT, a, b figure.Figure, what string) {
	require.Equal(t, a.Known, b.Known, "%s: %v, %v", what, a.Gaps, b.Gaps)
	require.InDelta(t, a.Value, b.Value, 1e-8*(1+max(a.Value, -a.Value)), what)
}

// TestOrderOfEntriesDoesNotMatter shuffles components and conductors of a record.
func TestOrderOfEntriesDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, text := drawYard(t, 1, 10)
		r, s := read(t, text), read(t, text)
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1))
		random.Shuffle(len(s.Components), func(i, j int) { s.Components[i], s.Components[j] = s.Components[j], s.Components[i] })
		random.Shuffle(len(s.Conductors), func(i, j int) { s.Conductors[i], s.Conductors[j] = s.Conductors[j], s.Conductors[i] })
		a, b := Analyse(r), Analyse(s)
		for id, x := range a.Conductors {
			y := b.Conductors[id]
			sameFigure(t, x.Current, y.Current, id+" current\n"+text)
			sameFigure(t, x.Surge, y.Surge, id+" surge")
			sameFigure(t, x.Guard, y.Guard, id+" guard\n"+text)
			require.ElementsMatch(t, x.GuardBy, y.GuardBy, id+" guard\n"+text)
			sameFigure(t, x.FaultHighA, y.FaultHighA, id+" fault\n"+text)
			sameFigure(t, x.FaultLowA, y.FaultLowA, id+" least fault\n"+text)
			sameFigure(t, x.ClearS, y.ClearS, id+" clearing time\n"+text)
			sameFigure(t, x.ClearLeastS, y.ClearLeastS, id+" least clearing time\n"+text)
			sameFigure(t, x.LetThroughA2s, y.LetThroughA2s, id+" energy\n"+text)
			sameFigure(t, x.LetThroughLeastA2s, y.LetThroughLeastA2s, id+" least energy\n"+text)
			require.Equal(t, x.Clears.Known, y.Clears.Known, id)
			require.Equal(t, x.Clears.Value, y.Clears.Value, id)
			sameFigure(t, x.StallC, y.StallC, id+" stall temperature\n"+text)
			sameFigure(t, x.TemperatureC, y.TemperatureC, id+" temperature")
			require.Equal(t, x.Ungrounded, y.Ungrounded)
			require.Equal(t, x.AlwaysLive, y.AlwaysLive)
			require.Equal(t, feedWords(x), feedWords(y), id)
		}
		for id, x := range a.Loads {
			y := b.Loads[id]
			sameFigure(t, x.Current, y.Current, id+" current")
			sameFigure(t, x.VoltageV, y.VoltageV, id+" voltage")
			sameFigure(t, x.DropFormulaV, y.DropFormulaV, id+" drop by formula")
			sameFigure(t, x.DropNetworkV, y.DropNetworkV, id+" drop\n"+text)
			sameFigure(t, x.LowVoltageV, y.LowVoltageV, id+" low voltage\n"+text)
			sameFigure(t, x.StallOpenS, y.StallOpenS, id+" stall\n"+text)
			sameFigure(t, x.StallHeatS, y.StallHeatS, id+" stall heat\n"+text)
			require.ElementsMatch(t, x.Out, y.Out, id+" out\n"+text)
			require.ElementsMatch(t, x.Back, y.Back, id+" back\n"+text)
			require.ElementsMatch(t, x.Devices, y.Devices, id+" devices\n"+text)
		}
		for id, x := range a.Devices {
			y := b.Devices[id]
			sameFigure(t, x.FaultHighA, y.FaultHighA, id+" fault")
			sameFigure(t, x.FaultLowA, y.FaultLowA, id+" least fault\n"+text)
			sameFigure(t, x.RunningA, y.RunningA, id+" current")
			sameFigure(t, x.LoadA, y.LoadA, id+" continuous current")
			require.Len(t, y.Selective, len(x.Selective), id+" selective\n"+text)
			for up, truth := range x.Selective {
				require.Equal(t, truth.Known, y.Selective[up].Known, id+" selective\n"+text)
				require.Equal(t, truth.Value, y.Selective[up].Value, id+" selective\n"+text)
			}
			require.ElementsMatch(t, x.Loads, y.Loads, id)
		}
	})
}

// feedWords is what a conductor's feeds say, sorted.
func feedWords(c *ConductorResult) []string {
	var words []string
	for _, f := range c.Feeds {
		next := slices.Sorted(slices.Values(f.NextDevices))
		words = append(words, fmt.Sprint(f.Source, f.Ahead, f.Bare, next, f.Length.Known, f.Length.Value))
	}
	slices.Sort(words)
	return words
}

// TestResistiveNetworkScales doubles the voltage of every battery: in a network of
// resistances all voltages and currents double.
func TestResistiveNetworkScales(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, text := (&yard{t: t, resistive: true}).draw(1, 12)
		// Recorded resistances only: an estimate scales with the voltage.
		text = strings.ReplaceAll(text, "cranking:", "internal_resistance: 5 mohm, cranking:")
		double := strings.NewReplacer("nominal: 12 V", "nominal: 24 V", "nominal: 6 V", "nominal: 12 V").Replace(text)
		one, two := caseOf(Analyse(read(t, text)), All), caseOf(Analyse(read(t, double)), All)
		for id, v := range one.Currents {
			require.InDelta(t, 2*v, two.Currents[id], 1e-8*(1+max(v, -v)), "%s\n%s", id, text)
		}
		for id, v := range one.Voltages {
			require.InDelta(t, 2*v, two.Voltages[id], 1e-9, id)
		}
	})
}

// TestRemovingALoadLowersNoVoltage takes one load out of a network of resistances:
// no load that is left loses voltage.
func TestRemovingALoadLowersNoVoltage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y, text := (&yard{t: t, resistive: true}).draw(2, 12)
		n := build(read(t, text))
		s := newSolver(n, nil)
		all := s.every()
		gone := rapid.IntRange(0, len(all)-1).Draw(t, "gone")
		rest := slices.Delete(slices.Clone(all), gone, gone+1)
		f := s.family(s.base, full)
		before, after := f.solve(all), f.solve(rest)
		for _, p := range rest {
			b := &n.branches[p.branch]
			for k := range f.meshes {
				require.GreaterOrEqual(t, over(b)(after.solutions[k]), over(b)(before.solutions[k])-1e-9, "%s of %v\n%s", b.id, y.loads, text)
			}
		}
	})
}

// TestDropGrowsWithLengthAndShrinksWithArea draws pairs of feeders.
func TestDropGrowsWithLengthAndShrinksWithArea(t *testing.T) {
	gauges := []string{"16 AWG", "14 AWG", "12 AWG", "10 AWG", "8 AWG", "6 AWG", "4 AWG", "2 AWG", "1/0 AWG", "2/0 AWG"}
	drop := func(t *rapid.T, gauge string, mm, ambient int) (network, formula float64) {
		text := sketch(boat, "bat: kind: battery, nominal: 12 V, internal_resistance: 5 mohm\nlamp: kind: lamp, current: 9 A",
			fmt.Sprintf("P: bat.pos > lamp.pos, %s, %d mm\nN: bat.neg > lamp.neg, %s, %d mm, negative", gauge, mm, gauge, mm))
		a := Analyse(read(t, strings.Replace(text, "ambient: 30 degC", fmt.Sprintf("ambient: %d degC", ambient), 1)))
		l := a.Loads["lamp"]
		require.True(t, l.DropNetworkV.Known && l.DropFormulaV.Known)
		return l.DropNetworkV.Value, l.DropFormulaV.Value
	}
	rapid.Check(t, func(t *rapid.T) {
		thin := rapid.IntRange(0, len(gauges)-2).Draw(t, "thin")
		short := rapid.IntRange(100, 8000).Draw(t, "short")
		more := rapid.IntRange(1, 5000).Draw(t, "more")
		cool := rapid.IntRange(30, 50).Draw(t, "cool")
		network, formula := drop(t, gauges[thin], short, cool)
		longer, longerFormula := drop(t, gauges[thin], short+more, cool)
		require.Greater(t, longer, network)
		require.Greater(t, longerFormula, formula)
		thick, thickFormula := drop(t, gauges[thin+1], short, cool)
		require.Less(t, thick, network)
		require.Less(t, thickFormula, formula)
		hot, hotFormula := drop(t, gauges[thin], short, cool+10)
		require.Greater(t, hot, network)
		require.Equal(t, formula, hotFormula, "the formula takes no temperature")
	})
}
