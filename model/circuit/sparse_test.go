package circuit

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// drawMatrix draws a sparse positive definite matrix: the conductances of a
// random network with every node tied to ground somewhere.
func drawMatrix(t *rapid.T) (n int, entries []entry) {
	n = rapid.IntRange(1, 40).Draw(t, "n")
	siemens := func() float64 { return math.Pow(10, rapid.Float64Range(-2, 4).Draw(t, "siemens")) }
	for i := range n {
		entries = append(entries, entry{i, i, siemens()})
	}
	for range rapid.IntRange(0, 3*n).Draw(t, "branches") {
		i, j, g := rapid.IntRange(0, n-1).Draw(t, "i"), rapid.IntRange(0, n-1).Draw(t, "j"), siemens()
		if i != j {
			entries = append(entries, entry{i, i, g}, entry{j, j, g}, entry{i, j, -g})
		}
	}
	return n, entries
}

// TestSparseAgreesWithGonum checks the factorisation against the dense Cholesky
// of gonum, an independent one.
func TestSparseAgreesWithGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, entries := drawMatrix(t)
		dense := mat.NewSymDense(n, nil)
		for _, e := range entries {
			dense.SetSym(e.row, e.col, dense.At(e.row, e.col)+e.value)
		}
		b := make([]float64, n)
		for i := range b {
			b[i] = rapid.Float64Range(-100, 100).Draw(t, "b")
		}
		f, bad := factorise(n, entries, order(n, entries))
		require.Equal(t, -1, bad)
		x := f.solve(b)

		var chol mat.Cholesky
		require.True(t, chol.Factorize(dense))
		var want mat.VecDense
		require.NoError(t, chol.SolveVecTo(&want, mat.NewVecDense(n, b)))
		scale := mat.Norm(&want, math.Inf(1))
		for i := range x {
			require.InDelta(t, want.AtVec(i), x[i], 1e-9*(1e-9+scale))
		}
	})
}

func TestOrderIsAPermutation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n, entries := drawMatrix(t)
		seen := make([]bool, n)
		for _, k := range order(n, entries) {
			require.False(t, seen[k])
			seen[k] = true
		}
	})
}

// A chain of resistors fills nothing in: L has one entry for each of them.
func TestOrderKeepsAChainThin(t *testing.T) {
	const n = 1000
	entries := []entry{{0, 0, 1}}
	for i := range n - 1 {
		entries = append(entries, entry{i, i, 1}, entry{i + 1, i + 1, 1}, entry{i, i + 1, -1})
	}
	f, bad := factorise(n, entries, order(n, entries))
	require.Equal(t, -1, bad)
	assert.Len(t, f.values, n-1)
}

// A star of many branches must not cost the square of their number: each leaf
// goes before the hub.
func TestOrderKeepsAStarThin(t *testing.T) {
	const n = 2000
	entries := []entry{{0, 0, 1}}
	for i := 1; i < n; i++ {
		entries = append(entries, entry{0, 0, 1}, entry{i, i, 1}, entry{0, i, -1})
	}
	f, bad := factorise(n, entries, order(n, entries))
	require.Equal(t, -1, bad)
	assert.Len(t, f.values, n-1)
}

func TestSingularMatrixNamesItsRow(t *testing.T) {
	// Rows 1 and 2 hang together and on nothing else.
	entries := []entry{{0, 0, 5}, {1, 1, 3}, {2, 2, 3}, {1, 2, -3}}
	_, bad := factorise(3, entries, order(3, entries))
	assert.Contains(t, []int{1, 2}, bad)
}
