package circuit

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// TestPatternServesOtherValues factorises matrices of one pattern one after the
// other: each has to come out as if it were the first, to the bit.
func TestPatternServesOtherValues(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, entries := drawMatrix(t)
		place := order(n, entries)
		p := newPattern(n, entries, place)
		for range 3 {
			scaled := slices.Clone(entries)
			for i := range scaled {
				scaled[i].value *= rapid.Float64Range(0.5, 2).Draw(t, "factor")
			}
			want, bad := factorise(n, scaled, place)
			got, same := p.factorise(scaled)
			require.Equal(t, bad, same)
			if bad < 0 {
				require.Equal(t, want.values, got.values)
				require.Equal(t, want.d, got.d)
				require.Equal(t, want.rows, got.rows)
			}
		}
	})
}

// TestGridsOfOneShape prepares grids that differ in resistance, each like the one
// before, and solves each as if it stood alone. Links that lose or gain their
// resistance are of another shape.
func TestGridsOfOneShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		nodes := rapid.IntRange(2, 12).Draw(t, "nodes")
		links := []gridLink{{a: 1, b: 0, ohms: 0.01, volts: 12.6}}
		for i := 2; i < nodes; i++ {
			links = append(links, gridLink{a: i, b: rapid.IntRange(0, i-1).Draw(t, "to")})
		}
		for range rapid.IntRange(0, 4).Draw(t, "ties") {
			links = append(links, gridLink{a: rapid.IntRange(0, nodes-1).Draw(t, "a"), b: rapid.IntRange(0, nodes-1).Draw(t, "b")})
		}
		bare := rapid.SliceOfN(rapid.Bool(), len(links), len(links)).Draw(t, "bare")
		drains := []drain{{branch: -1, a: nodes - 1, b: 0, amps: 3}, {branch: -1, a: nodes / 2, b: 0, siemens: 0.25}}
		var before *grid
		for round := range 4 {
			these := slices.Clone(links)
			for i := range these {
				if these[i].ohms = rapid.Float64Range(0.001, 2).Draw(t, "ohms"); i > 0 && bare[i] {
					these[i].ohms = 0
				}
			}
			if round == 2 {
				these[0].ohms = 0
			}
			g, alone := newGrid(nodes, these, []int{0}, before), newGrid(nodes, these, []int{0}, nil)
			require.Equal(t, before != nil && round != 2 && round != 3, before != nil && g.shape == before.shape)
			require.Equal(t, alone.clashes, g.clashes)
			require.Equal(t, alone.rest, g.rest)
			want, got := alone.solve(true, drains), g.solve(true, drains)
			require.Equal(t, want == nil, got == nil)
			if want != nil {
				require.InDeltaSlice(t, want.stand, got.stand, 1e-9)
				require.InDeltaSlice(t, want.amps, got.amps, 1e-6)
			}
			before = g
		}
	})
}

func TestPlacesFindBranches(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		branches := rapid.SliceOfDistinct(rapid.IntRange(0, 40), func(i int) int { return i }).Draw(t, "branches")
		half := len(branches) / 2
		p := newPlaces(branches[:half])
		for k := half; k < len(branches); k++ {
			p = p.add(branches[:k+1])
		}
		for i := range 41 {
			at, found := p.of(branches, i)
			require.Equal(t, slices.Contains(branches, i), found, "%d", i)
			if found {
				require.Equal(t, i, branches[at])
			}
		}
	})
}
