package diagram_test

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/reports/diagram"
)

const records = "../../testdata/records"

func decoded(t require.TestingT, name, text string) *record.Record {
	r, faults := record.Decode(name, []byte(text))
	require.Empty(t, faults, text)
	return r
}

func demos(t *testing.T) map[string]*record.Record {
	t.Helper()
	paths, err := filepath.Glob(records + "/*/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	all := map[string]*record.Record{}
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		name := strings.TrimSuffix(strings.TrimPrefix(path, records+"/"), ".yaml")
		all[name] = decoded(t, path, string(text))
	}
	return all
}

// isProper holds a diagram to what every one has to be.
func isProper(t require.TestingT, r *record.Record, o diagram.Options) {
	d := diagram.Lay(r, found(r), o)
	traced := trace(d)
	assert.Empty(t, traced.overlaps(), "no text runs into another")
	assert.Empty(t, traced.crossed(), "no line runs through a text")
	for _, part := range []float64{
		traced.area.X, traced.area.Y,
		traced.page.W - traced.area.X - traced.area.W, traced.page.H - traced.area.Y - traced.area.H,
	} {
		assert.GreaterOrEqual(t, part, -0.1, "nothing stands outside of the page")
	}
	for _, c := range r.Components {
		assert.Equal(t, 1, traced.ids[diagram.AnchorOf(c.Path)], c.Path)
	}
	for _, c := range r.Conductors {
		assert.Equal(t, 1, traced.ids[diagram.AnchorOf(c.Path)], c.Path)
	}
	for _, p := range r.Penetrations {
		assert.Equal(t, 1, traced.ids[diagram.AnchorOf(p.Path)], p.Path)
	}
	for _, s := range r.Spaces {
		assert.Equal(t, 1, traced.ids[diagram.AnchorOf(s.Path)], s.Path)
	}
	areLines(t, r, traced, o)
}

// found is a breach or two of almost every entry of a record.
func found(r *record.Record) []verdict.Verdict {
	rule := &verdict.Rule{ID: "routing/thing-amiss", Title: "Thing amiss"}
	var all []verdict.Verdict
	add := func(path string) {
		for range len(all) % 3 {
			all = append(all, verdict.Verdict{Rule: rule, Outcome: verdict.Breach, Severity: verdict.Severity(len(all) % 4), Subject: path, ID: path, Says: "it is amiss"})
		}
		all = append(all, verdict.Verdict{Rule: rule, Outcome: verdict.Waived, Severity: verdict.Severity(len(all) % 4), Subject: path + ".ends.to", ID: path, Says: "it is amiss"})
	}
	for _, c := range r.Components {
		add(c.Path)
	}
	for _, c := range r.Conductors {
		add(c.Path)
	}
	for _, p := range r.Penetrations {
		add(p.Path)
	}
	for _, s := range r.Spaces {
		add(s.Path)
	}
	return all
}

// areLines checks the lines of conductors: each is there once unless it is
// hidden, is orthogonal, and shares no piece with another.
func areLines(t require.TestingT, r *record.Record, traced *tracing, o diagram.Options) {
	all := traced.conductors()
	var pieces []tracedLine
	for _, c := range r.Conductors {
		id := diagram.AnchorOf(c.Path)
		lines := drawn(all[id])
		back := c.Role.V == "negative" || c.Role.V == "bonding"
		if (back && !o.Returns) || c.From.Component == c.To.Component {
			assert.Empty(t, lines, "%s is listed only", id)
			continue
		}
		require.NotEmpty(t, lines, "%s has a line", id)
		for i, l := range lines {
			assert.True(t, l.from.X == l.to.X || l.from.Y == l.to.Y, "%s is orthogonal: %v", id, l)
			assert.Equal(t, lines[0].poly, l.poly, "%s is one line", id)
			if i > 0 {
				assert.Equal(t, lines[i-1].to, l.from, "%s is one line", id)
			}
		}
		pieces = append(pieces, lines...)
	}
	for i, a := range pieces {
		for _, b := range pieces[i+1:] {
			if a.of.ID != b.of.ID {
				assert.False(t, along(a, b), "%s runs on %s", a.of.ID, b.of.ID)
			}
		}
	}
}

// drawn leaves out the borders of swatches: those are frames of four sides.
func drawn(lines []tracedLine) []tracedLine {
	if len(lines) == 0 {
		return nil
	}
	var out []tracedLine
	for _, l := range lines {
		if l.poly == lines[0].poly && !framed(lines, l.poly) {
			out = append(out, l)
		}
	}
	return out
}

func framed(lines []tracedLine, poly int) bool {
	var of []tracedLine
	for _, l := range lines {
		if l.poly == poly {
			of = append(of, l)
		}
	}
	return of[0].from == of[len(of)-1].to
}

// along tells whether two pieces lie on each other for some length.
func along(a, b tracedLine) bool {
	overlap := func(a1, a2, b1, b2 float64) bool {
		return max(min(a1, a2), min(b1, b2)) < min(max(a1, a2), max(b1, b2))-0.1
	}
	switch {
	case a.from.Y == a.to.Y && b.from.Y == b.to.Y:
		return a.from.Y == b.from.Y && overlap(a.from.X, a.to.X, b.from.X, b.to.X)
	case a.from.X == a.to.X && b.from.X == b.to.X:
		return a.from.X == b.from.X && overlap(a.from.Y, a.to.Y, b.from.Y, b.to.Y)
	}
	return false
}

func TestDemosAreDrawnProperly(t *testing.T) {
	for name, r := range demos(t) {
		for _, returns := range []bool{false, true} {
			t.Run(name, func(t *testing.T) { isProper(t, r, diagram.Options{Returns: returns, Caution: "Isolate."}) })
		}
	}
}

// seeded picks numbers that are the same in every run.
func seeded(seed uint64) func(string, int) int {
	source := rand.New(rand.NewPCG(seed, 1))
	return func(_ string, n int) int { return source.IntN(n) }
}

func TestLargeInstallationsAreDrawnProperly(t *testing.T) {
	for name, size := range map[string][2]int{"40 components": {2, 7}, "120 components": {6, 8}} {
		for _, returns := range []bool{false, true} {
			t.Run(name, func(t *testing.T) {
				y := newYard(seeded(7))
				y.system(size[0], size[1])
				isProper(t, decoded(t, name, y.record()), diagram.Options{Returns: returns})
			})
		}
	}
}

func TestAnyInstallationIsDrawnProperly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := newYard(func(label string, n int) int { return rapid.IntRange(0, n-1).Draw(t, label) })
		if rapid.Bool().Draw(t, "a system") {
			y.system(rapid.IntRange(0, 2).Draw(t, "panels"), rapid.IntRange(0, 4).Draw(t, "circuits"))
		}
		kinds := record.Kinds()
		for i := range rapid.IntRange(0, 8).Draw(t, "strays") {
			kind := kinds[rapid.IntRange(0, len(kinds)-1).Draw(t, "kind")]
			if kind.Name == "relay" || kind.Name == "controller" {
				continue // they have the terminals of their links
			}
			y.add(strings.Repeat("x", 1+i*4)+"-stray", kind.Name, y.spaces[y.pick("space", len(y.spaces))], "")
		}
		if len(y.components) > 0 {
			y.tangle(rapid.IntRange(0, 14).Draw(t, "tangle"))
		}
		isProper(t, decoded(t, "generated", y.record()), diagram.Options{Returns: rapid.Bool().Draw(t, "returns")})
	})
}
