package circuit

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// exact solves a grid in rational numbers: a dense Gauss-Jordan elimination of
// the full set of equations, Kirchhoff's laws as they stand, with the current of
// every link and the voltage of every node as unknowns.
func exact(nodes int, links []gridLink, drains []drain, zero int) (volts, amps []float64, ok bool) {
	n := nodes + len(links)
	rows := make([][]*big.Rat, n)
	for i := range rows {
		rows[i] = make([]*big.Rat, n+1)
		for j := range rows[i] {
			rows[i][j] = new(big.Rat)
		}
	}
	add := func(i, j int, v float64) { rows[i][j].Add(rows[i][j], new(big.Rat).SetFloat64(v)) }
	for k, l := range links {
		add(l.a, nodes+k, 1)
		add(l.b, nodes+k, -1)
		add(nodes+k, l.a, 1)
		add(nodes+k, l.b, -1)
		add(nodes+k, nodes+k, -max(l.ohms, 0))
		add(nodes+k, n, l.volts)
	}
	for _, d := range drains {
		add(d.a, n, -d.amps)
		add(d.b, n, d.amps)
	}
	for j := range rows[zero] {
		rows[zero][j].SetInt64(0)
	}
	add(zero, zero, 1)
	for c := range n {
		p := c
		for p < n && rows[p][c].Sign() == 0 {
			p++
		}
		if p == n {
			return nil, nil, false
		}
		rows[c], rows[p] = rows[p], rows[c]
		inverse := new(big.Rat).Inv(rows[c][c])
		for j := c; j <= n; j++ {
			rows[c][j].Mul(rows[c][j], inverse)
		}
		for i := range n {
			if i == c || rows[i][c].Sign() == 0 {
				continue
			}
			factor := new(big.Rat).Set(rows[i][c])
			for j := c; j <= n; j++ {
				rows[i][j].Sub(rows[i][j], new(big.Rat).Mul(factor, rows[c][j]))
			}
		}
	}
	for i := range n {
		v, _ := rows[i][n].Float64()
		if i < nodes {
			volts = append(volts, v)
		} else {
			amps = append(amps, v)
		}
	}
	return volts, amps, true
}

// TestGridIsExact compares small grids, links without resistance among them,
// with their exact solution: to ten digits, where resistances lie up to fifty thousand
// apart.
func TestGridIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		nodes := rapid.IntRange(2, 8).Draw(t, "nodes")
		ohms := func() float64 { return float64(rapid.IntRange(20, 1000000).Draw(t, "uohm")) / 1e6 }
		links := []gridLink{{a: 1, b: 0, ohms: ohms(), volts: 12.6}}
		for i := 2; i < nodes; i++ {
			l := gridLink{a: i, b: rapid.IntRange(0, i-1).Draw(t, "to"), ohms: ohms()}
			if rapid.IntRange(1, 4).Draw(t, "bare") == 1 {
				l.ohms = 0
			}
			links = append(links, l)
		}
		for range rapid.IntRange(0, 4).Draw(t, "ties") {
			a, b := rapid.IntRange(0, nodes-1).Draw(t, "a"), rapid.IntRange(0, nodes-1).Draw(t, "b")
			if a != b {
				links = append(links, gridLink{a: a, b: b, ohms: ohms()})
			}
		}
		g := newGrid(nodes, links, []int{0}, nil)
		if len(g.clashes) > 0 {
			t.Skip("the source is shorted")
		}
		drains := []drain{{branch: -1, a: nodes - 1, b: 0, amps: float64(rapid.IntRange(1, 100).Draw(t, "amps"))}}
		volts, amps, ok := exact(nodes, links, drains, 0)
		require.True(t, ok)
		got := g.solve(true, drains)
		for i := range volts {
			require.InDelta(t, volts[i], g.rest[i]+got.stand[i], 1e-10*100)
		}
		for k := range amps {
			require.InDelta(t, amps[k], got.amps[k], 1e-10*100)
		}
	})
}
