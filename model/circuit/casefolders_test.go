package circuit

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"driploop/model/figure"
	"driploop/model/record"
)

// want is the want.yaml of a case folder: figures by the id they belong to, each
// compared to the tolerance, which is relative.
type want struct {
	Tolerance  float64
	Loads      map[string]map[string]float64
	Conductors map[string]map[string]float64
	Devices    map[string]map[string]float64
	Components map[string]map[string]float64
	Cases      map[string]struct{ Currents, Sources, Voltages map[string]float64 }
	Feeds      map[string]struct {
		Device   string
		EndsAt   string  `yaml:"ends_at"`
		LengthMM float64 `yaml:"length_mm"`
	}
}

// TestCaseFolders checks the networks of testdata/circuits, each worked by hand in
// its README.
func TestCaseFolders(t *testing.T) {
	folders, err := filepath.Glob("../../testdata/circuits/*/record.yaml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(folders), 8)
	for _, path := range folders {
		dir := filepath.Dir(path)
		t.Run(filepath.Base(dir), func(t *testing.T) {
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			r, faults := record.Decode(path, text)
			require.Empty(t, faults)
			require.FileExists(t, filepath.Join(dir, "README.md"))
			file, err := os.Open(filepath.Join(dir, "want.yaml"))
			require.NoError(t, err)
			defer file.Close()
			var w want
			d := yaml.NewDecoder(file)
			d.KnownFields(true)
			require.NoError(t, d.Decode(&w))
			require.Positive(t, w.Tolerance)
			checkFolder(t, w, Analyse(r))
		})
	}
}

func checkFolder(t *testing.T, w want, a *Analysis) {
	require.Empty(t, a.Problems)
	near := func(want, got float64, what string) {
		assert.InDelta(t, want, got, w.Tolerance*(1e-3+math.Abs(want)), what)
	}
	figures := func(kind string, all map[string]map[string]float64, of func(id, name string) (figure.Figure, bool)) {
		for id, list := range all {
			for name, v := range list {
				f, ok := of(id, name)
				require.True(t, ok, "no figure %s.%s.%s", kind, id, name)
				require.True(t, f.Known, "%s.%s.%s: %v", kind, id, name, f.Gaps)
				near(v, f.Value, kind+"."+id+"."+name)
			}
		}
	}
	figures("loads", w.Loads, func(id, name string) (figure.Figure, bool) {
		l := a.Loads[id]
		f, ok := map[string]figure.Figure{
			"current": l.Current, "drop_network": l.DropNetworkV, "drop_formula": l.DropFormulaV, "voltage": l.VoltageV,
			"low_voltage": l.LowVoltageV, "nominal": l.NominalV,
		}[name]
		return f, ok
	})
	figures("conductors", w.Conductors, func(id, name string) (figure.Figure, bool) {
		c := a.Conductors[id]
		f, ok := map[string]figure.Figure{
			"current": c.Current, "surge": c.Surge, "fault_high": c.FaultHighA, "fault_low": c.FaultLowA, "clear": c.ClearS,
			"let_through": c.LetThroughA2s, "withstand": c.WithstandA2s,
		}[name]
		return f, ok
	})
	figures("devices", w.Devices, func(id, name string) (figure.Figure, bool) {
		d := a.Devices[id]
		f, ok := map[string]figure.Figure{
			"nominal": d.NominalV, "cranking": d.CrankingA, "fault_high": d.FaultHighA, "fault_low": d.FaultLowA,
		}[name]
		return f, ok
	})
	figures("components", w.Components, func(id, name string) (figure.Figure, bool) {
		c := a.Components[id]
		f, ok := map[string]figure.Figure{"nominal": c.NominalV, "through": c.Through}[name]
		return f, ok
	})
	byName := map[string]*CaseResult{}
	for _, c := range a.Cases.All() {
		byName[c.Name] = c
	}
	for name, want := range w.Cases {
		c := byName[name]
		require.NotNil(t, c, "no case %q", name)
		for _, list := range []struct {
			what      string
			want, got map[string]float64
		}{{"current", want.Currents, c.Currents}, {"source", want.Sources, c.Sources}, {"voltage", want.Voltages, c.Voltages}} {
			for id, v := range list.want {
				require.Contains(t, list.got, id, "%s: %s", name, list.what)
				near(v, list.got[id], name+": "+list.what+" of "+id)
			}
		}
	}
	for id, want := range w.Feeds {
		f := a.Conductors[id].Feeds[0]
		assert.Equal(t, want.Device, f.Device, id)
		assert.Equal(t, want.EndsAt, f.EndsAtDevice, id)
		if want.LengthMM > 0 {
			near(want.LengthMM, f.Length.Value, id)
		}
	}
}
