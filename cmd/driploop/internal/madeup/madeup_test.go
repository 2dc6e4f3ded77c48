package madeup_test

import (
	"bytes"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/cmd/driploop/internal/madeup"
	"driploop/model/record"
	"driploop/model/yard"
)

func TestFilesAreWhatTheyAreSaidToBe(t *testing.T) {
	var wires []int
	kinds := map[madeup.Kind]int{}
	bytesOfAll := 0
	for f := range madeup.Repository(150) {
		kinds[f.Kind]++
		if f.Kind == madeup.Stray {
			assert.False(t, yard.IsRecord(f.Text), f.Path)
			continue
		}
		require.True(t, yard.IsRecord(f.Text), f.Path)
		got, faults := record.Decode(f.Path, f.Text)
		if f.Kind == madeup.Broken {
			assert.NotEmpty(t, faults, f.Path)
			continue
		}
		require.Empty(t, faults, f.Path)
		wires = append(wires, len(got.Conductors))
		bytesOfAll += len(f.Text)
	}
	slices.Sort(wires)
	t.Logf("conductors: %d to %d, median %d; %d bytes on average; %v", wires[0], wires[len(wires)-1], wires[len(wires)/2], bytesOfAll/len(wires), kinds)
	assert.InDelta(t, 40, wires[len(wires)/2], 5, "median number of conductors")
	assert.Less(t, wires[0], 11)
	assert.Greater(t, wires[len(wires)-1], 120)
	assert.Positive(t, kinds[madeup.Broken])
	assert.Positive(t, kinds[madeup.Stray])
}

func TestTheSameNumbersGiveTheSameBytes(t *testing.T) {
	first := rand.New(rand.NewPCG(1, 2))  //nolint:gosec // the same numbers are wanted
	second := rand.New(rand.NewPCG(1, 2)) //nolint:gosec // as above
	for i := range 5 {
		assert.True(t, bytes.Equal(madeup.Job(first, i), madeup.Job(second, i)))
	}
}
