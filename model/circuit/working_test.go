package circuit

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"driploop/model/figure"
)

// sums returns what the inputs of a step add up to: of those that begin with
// "R(" or "k²·R(" as they stand, and times the current that follows each.
func sums(step figure.Step) (ohms, drops float64) {
	for k, in := range step.Inputs {
		if !strings.Contains(in.Symbol, "R(") {
			continue
		}
		ohms += in.Value / 1000
		if k+1 < len(step.Inputs) && strings.HasPrefix(step.Inputs[k+1].Symbol, "I(") {
			drops += in.Value / 1000 * step.Inputs[k+1].Value
		}
	}
	return ohms, drops
}

// TestWorkingAddsUp works drops and faults out again from what their working
// prints: the drop as the sum of R·I, a fault as U over the sum of R.
func TestWorkingAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, text := drawYard(t, 1, 8)
		a := Analyse(read(t, text))
		for id, l := range a.Loads {
			if l.DropNetworkV.Known {
				_, drops := sums(l.DropNetworkV.Working()[len(l.DropNetworkV.Working())-1])
				require.InDelta(t, l.DropNetworkV.Value, drops, 1e-6*(1+drops), "%s\n%s", id, text)
			}
		}
		check := func(id string, f figure.Figure) {
			if f.Known {
				step := f.Working()[len(f.Working())-1]
				ohms, _ := sums(step)
				require.InDelta(t, f.Value, step.Inputs[0].Value/ohms, 1e-6*f.Value, "%s\n%s", id, text)
			}
		}
		for id, c := range a.Conductors {
			check(id, c.FaultLowA)
			check(id, c.FaultHighA)
		}
		for id, d := range a.Devices {
			check(id, d.FaultHighA)
		}
	})
}
