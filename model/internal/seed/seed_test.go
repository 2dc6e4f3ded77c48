package seed

import (
	"flag"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestFixLeavesASeedThatIsGiven(t *testing.T) {
	if flag.Lookup("rapid.seed").Value.String() != "0" {
		t.Skip("a seed is given on the command line")
	}
	t.Setenv("RAPID_SEED", "7")
	Fix()
	require.Equal(t, "0", flag.Lookup("rapid.seed").Value.String())
}

func TestFixDrawsTheSame(t *testing.T) {
	t.Setenv("RAPID_SEED", "")
	Fix()
	draw := func() (drawn []int) {
		rapid.Check(t, func(t *rapid.T) { drawn = append(drawn, rapid.Int().Draw(t, "n")) })
		return drawn
	}
	require.Equal(t, draw(), draw())
}
