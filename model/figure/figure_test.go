package figure

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWorkingIsPutTogetherWhenAskedFor(t *testing.T) {
	asked := 0
	f := Worked(1.0000000000001, "A", func() []Step {
		asked++
		return []Step{{Formula: "I", Result: float64(asked)}}
	})
	assert.Equal(t, 1.0, f.Value, "rounded")
	assert.True(t, f.Known)
	assert.Zero(t, asked, "nobody asked")
	assert.Equal(t, 1.0, f.Working()[0].Result)
	assert.Equal(t, 2.0, f.Working()[0].Result, "anew each time, so that nobody spoils it for others")

	other := f.Shown(func() []Step { return nil })
	assert.Empty(t, other.Working())
	assert.Equal(t, 3.0, f.Working()[0].Result, "the first keeps its own")
}

func TestFiguresWithoutWorking(t *testing.T) {
	assert.Empty(t, Of(3, "V").Working())
	assert.Empty(t, Open(Because("nothing is known")).Working())
	assert.Equal(t, []Step{{Formula: "U"}}, Of(3, "V", Step{Formula: "U"}).Working())
}
