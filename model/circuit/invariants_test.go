package circuit

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"driploop/model/record"
)

// loadAmps returns what a load of a drawn network takes at a voltage, from its
// record alone.
func loadAmps(c *record.Component, volts float64) float64 {
	switch {
	case c.LoadOhms.Is():
		return volts / (c.LoadOhms.V.Base / 1000)
	case c.Power.Is():
		return c.Power.V.Base / volts
	}
	return math.Copysign(c.Current.V.Base, volts)
}

// residuals returns how far the currents of a case miss Kirchhoff's current law
// at each bus, load and source, and the power balance of the whole.
func residuals(r *record.Record, a *Analysis, c *CaseResult) (worst, power, turnover float64) {
	into := map[string]float64{} // by component (buses) or terminal
	key := func(t record.Terminal) string {
		if k := r.Component(t.Component).Kind.V; k == "busbar" || k == "ground" {
			return t.Component
		}
		return t.String()
	}
	for _, w := range r.Conductors {
		i := c.Currents[w.ID]
		into[key(w.To)] += i
		into[key(w.From)] -= i
		u := c.Voltages[w.From.String()] - c.Voltages[w.To.String()]
		power -= i * u
		worst = max(worst, math.Abs(u-i*a.Conductors[w.ID].RHot.Value/1000)/1e-3)
	}
	for _, m := range r.Components {
		pos, neg := m.ID+".pos", m.ID+".neg"
		u := c.Voltages[pos] - c.Voltages[neg]
		switch kind := m.Kind.V; {
		case kind == "lamp" || kind == "motor":
			i := loadAmps(m, u)
			worst = max(worst, math.Abs(into[pos]-i), math.Abs(into[neg]+i))
			power -= i * u
			turnover += math.Abs(i * u)
		case record.KindOf(kind).Source:
			i := c.Sources[m.ID]
			worst = max(worst, math.Abs(into[pos]+i), math.Abs(into[neg]-i))
			power += i * u
		case kind == "busbar":
			worst = max(worst, math.Abs(into[m.ID]))
		case kind == "fuse", kind == "breaker":
			power -= partPower(c, m, into, "line", "load")
		case kind == "switch", kind == "connector":
			power -= partPower(c, m, into, "in", "out")
		}
	}
	return worst, power, turnover
}

func partPower(c *CaseResult, m *record.Component, into map[string]float64, in, out string) float64 {
	i := into[m.ID+"."+in]
	return i * (c.Voltages[m.ID+"."+in] - c.Voltages[m.ID+"."+out])
}

// TestKirchhoffHolds checks drawn networks against the laws themselves: currents
// sum to zero at each bus and terminal, a conductor's drop is R·I, and what the
// sources give is what loads, conductors and parts take.
func TestKirchhoffHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, text := drawYard(t, 1, 30)
		r := read(t, text)
		a := Analyse(r)
		c := caseOf(a, All)
		if c.Problem != nil {
			require.Equal(t, Collapse, c.Problem.Kind)
			return
		}
		worst, power, turnover := residuals(r, a, c)
		require.Less(t, worst, 1e-7, "Kirchhoff's laws\n%s", text)
		require.Less(t, math.Abs(power), 1e-8*(1+turnover), "power balance\n%s", text)
	})
}

// TestOneLoadIsSolvedAsAll solves every load of drawn networks alone along its
// way, and again with the whole network: both have to agree, in every mesh.
func TestOneLoadIsSolvedAsAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, text := drawYard(t, 1, 12)
		n := build(read(t, text))
		s := newSolver(n, nil)
		base := s.ground(s.base, s.continuous())
		for _, l := range s.loads {
			for _, alone := range s.solveAlone(l) {
				lone := alone.lone
				agree(t, lone, lone.family.solve(lone.pulls), text)
			}
			c := n.branches[l].comp
			if !c.Stall.Is() || len(base.faults) > 0 {
				continue
			}
			for _, alone := range s.solveAlone(l) {
				stall := s.surge(alone, stalled, s.continuous())
				if stall.lone != nil {
					agree(t, stall.lone, stall.lone.family.solve(stall.pulls), text)
				}
			}
		}
	})
}

func agree(t *rapid.T, l *lone, o *outcome, text string) {
	require.Equal(t, len(o.faults) > 0, l.problem != nil, "%s", text)
	if l.problem != nil {
		return
	}
	for k, s := range o.solutions {
		for _, i := range o.family.closed {
			amps, _ := l.flow(k, i)
			require.InDelta(t, s.amps[i], amps, 1e-8*(1+math.Abs(amps)), "branch %d in mesh %d\n%s", i, k, text)
		}
		b := &l.family.net.branches[l.load]
		volts, _ := l.voltage(k)
		require.InDelta(t, over(b)(s), volts, 1e-9)
		for node, v := range l.potentials(k) {
			require.InDelta(t, s.volts[node], v, 1e-9)
		}
	}
}
