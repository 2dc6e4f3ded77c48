package diagram_test

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/record"
	"driploop/reports/diagram"
)

// forms are installations of every form that a record may have.
func forms() map[string]string {
	record := func(components, conductors string) string {
		out := "driploop: 1\njob: {number: F-1}\nvessel: {system: 12 V}\ncomponents:\n" + components
		if conductors != "" {
			out += "conductors:\n" + conductors
		}
		return out
	}
	base := "  house: {kind: battery}\n  fuse: {kind: fuse}\n  bus: {kind: busbar}\n  lamp: {kind: lamp}\n"
	long := strings.Repeat("very-long-name-", 3) + "of-a-lamp"
	return map[string]string{
		"one component": record("  house: {kind: battery}\n", ""),
		"no source":     record("  fuse: {kind: fuse}\n  lamp: {kind: lamp}\n", "  P: {from: fuse.load, to: lamp.pos, role: positive}\n"),
		"apart": record(base+"  pump: {kind: pump}\n  switch: {kind: switch}\n",
			"  P: {from: house.pos, to: lamp.pos, role: positive}\n  Q: {from: switch.out, to: pump.pos, role: positive}\n"),
		"ring": record(base+"  far: {kind: busbar}\n  f2: {kind: fuse}\n",
			"  P1: {from: house.pos, to: bus.a, role: positive}\n  P2: {from: bus.b, to: fuse.line, role: positive}\n  P3: {from: fuse.load, to: far.a, role: positive}\n"+
				"  P4: {from: bus.c, to: f2.line, role: positive}\n  P5: {from: f2.load, to: far.b, role: positive}\n  P6: {from: far.c, to: lamp.pos, role: positive}\n"),
		"fed from both ends": record(base+"  start: {kind: battery}\n  b2: {kind: busbar}\n  tie: {kind: switch}\n",
			"  P1: {from: house.pos, to: bus.a, role: positive}\n  P2: {from: start.pos, to: b2.a, role: positive}\n"+
				"  T1: {from: bus.b, to: tie.in, role: positive}\n  T2: {from: b2.b, to: tie.out, role: positive}\n  L: {from: b2.c, to: lamp.pos, role: positive}\n"),
		"both ends on one bus": record(base+"  tie: {kind: switch}\n",
			"  P1: {from: house.pos, to: bus.a, role: positive}\n  T1: {from: bus.b, to: tie.in, role: positive}\n  T2: {from: bus.c, to: tie.out, role: positive}\n"),
		"parallel pair": record(base,
			"  A: {from: house.pos, to: fuse.line, role: positive}\n  B: {from: house.pos, to: fuse.line, role: positive}\n  C: {from: fuse.load, to: lamp.pos, role: positive}\n"),
		"batteries in parallel": record("  one: {kind: battery}\n  two: {kind: battery}\n  lamp: {kind: lamp}\n",
			"  A: {from: one.pos, to: two.pos, role: positive}\n  B: {from: one.neg, to: two.neg, role: negative}\n  C: {from: two.pos, to: lamp.pos, role: positive}\n"),
		"an end on itself": record("  box: {kind: controller, links: [{between: [a, b]}]}\n  house: {kind: battery}\n",
			"  J: {from: box.a, to: box.b, role: control}\n  P: {from: house.pos, to: box.a, role: positive}\n"),
		"many terminals": record("  house: {kind: battery}\n  box: {kind: controller, links: [{between: [supply, a]}, {between: [supply, b]}, {between: [supply, c]}, {between: [supply, d]}]}\n"+
			"  l1: {kind: lamp}\n  l2: {kind: motor}\n  l3: {kind: pump}\n  l4: {kind: heater}\n",
			"  P: {from: house.pos, to: box.supply, role: positive}\n  A: {from: box.a, to: l1.pos, role: positive}\n  B: {from: box.b, to: l2.pos, role: positive}\n"+
				"  C: {from: box.c, to: l3.pos, role: positive}\n  D: {from: box.d, to: l4.pos, role: positive}\n  N: {from: l4.neg, to: house.neg, role: negative}\n"),
		"long ids": record("  house: {kind: battery}\n  "+long+": {kind: lamp, label: "+long+"}\n  nothingtobreakatanywhereatallinthisidofaswitch: {kind: switch}\n",
			"  "+long+": {from: house.pos, to: nothingtobreakatanywhereatallinthisidofaswitch.in, role: positive}\n"+
				"  Q: {from: nothingtobreakatanywhereatallinthisidofaswitch.out, to: "+long+".pos, role: positive}\n"),
		"nothing known": record("  a: {kind: battery}\n  b: {kind: lamp}\n", "  P: {from: a.pos, to: b.pos, role: positive, size: unknown, length: unknown, colour: unknown}\n"),
	}
}

func TestEveryFormIsDrawnProperly(t *testing.T) {
	for name, text := range forms() {
		for _, returns := range []bool{false, true} {
			t.Run(name, func(t *testing.T) { isProper(t, decoded(t, name, text), diagram.Options{Returns: returns}) })
		}
	}
}

// ends returns where the line of a conductor begins and ends.
func ends(t *testing.T, traced *tracing, id string) (from, to diagram.Point) {
	t.Helper()
	lines := drawn(traced.conductors()["draw-conductors."+id])
	require.NotEmpty(t, lines, id)
	return lines[0].from, lines[len(lines)-1].to
}

func TestSourcesStandLeftAndLoadsRight(t *testing.T) {
	for name, text := range forms() {
		r := decoded(t, name, text)
		traced := trace(diagram.Lay(r, nil, diagram.Options{}))
		kinds := func(c *record.Conductor) [2]record.Kind {
			return [2]record.Kind{record.KindOf(r.Component(c.From.Component).Kind.V), record.KindOf(r.Component(c.To.Component).Kind.V)}
		}
		left, right := math.Inf(1), math.Inf(-1)
		var atLeft, atRight [2]record.Kind
		sources, loads := false, false
		for _, c := range r.Conductors {
			if len(drawn(traced.conductors()[diagram.AnchorOf(c.Path)])) == 0 {
				continue
			}
			from, to := ends(t, traced, c.ID)
			if from.X < left {
				left, atLeft = from.X, kinds(c)
			}
			if to.X > right {
				right, atRight = to.X, kinds(c)
			}
			for _, k := range kinds(c) {
				sources, loads = sources || k.Source, loads || k.Load
			}
		}
		assert.Equal(t, sources, atLeft[0].Source || atLeft[1].Source, "%s: a source is leftmost", name)
		assert.Equal(t, loads, atRight[0].Load || atRight[1].Load, "%s: a load is rightmost", name)
	}
}

func TestALadderHasStraightRungs(t *testing.T) {
	y := newYard(seeded(5))
	y.system(2, 6)
	r := decoded(t, "ladder", y.record())
	traced := trace(diagram.Lay(r, nil, diagram.Options{}))
	for _, c := range r.Conductors {
		if c.Role.V == "positive" {
			from, to := ends(t, traced, c.ID)
			assert.Equal(t, from.Y, to.Y, c.ID)
		}
	}
}

func TestLongIdsAreShortenedAndInFullInTheTitle(t *testing.T) {
	drawing := svg(t, decoded(t, "long", forms()["long ids"]), nil, diagram.Options{})
	long := strings.Repeat("very-long-name-", 3) + "of-a-lamp"
	assert.NotRegexp(t, "<text[^>]*>"+long+"</text>", drawing)
	assert.Regexp(t, "<text[^>]*>very[^<]*…</text>", drawing)
	assert.Contains(t, drawing, "<title>"+long+": lamp")
	assert.Contains(t, drawing, "<title>"+long+": house.pos to ")
}

// Where the positive pole is the grounded one, it is the return.
func TestPositiveGroundIsTheReturn(t *testing.T) {
	text := strings.Replace(forms()["batteries in parallel"], "{system: 12 V}", "{system: 12 V, earthing: positive-ground}", 1)
	traced := trace(diagram.Lay(decoded(t, "positive", text), nil, diagram.Options{}))
	assert.NotEmpty(t, drawn(traced.conductors()["draw-conductors.B"]))
	assert.Empty(t, drawn(traced.conductors()["draw-conductors.A"]))
}

var sheet = regexp.MustCompile(`viewBox="0 0 ([0-9.]+) [0-9.]+" width="([0-9.]+)mm" height="([0-9.]+)mm"`)

// TestTextCanBeReadOnItsSheet: 5.5 point for the ids, on A4 with 40 components
// and on A3 with 120, within margins of 10 mm.
func TestTextCanBeReadOnItsSheet(t *testing.T) {
	for _, c := range []struct {
		panels, circuits, components int
		long, short                  float64
	}{
		{2, 7, 40, 277, 190},
		{6, 8, 120, 400, 277},
	} {
		for seed := range uint64(5) {
			t.Run(fmt.Sprintf("%d components, %d", c.components, seed), func(t *testing.T) {
				y := newYard(seeded(seed))
				y.system(c.panels, c.circuits)
				r := decoded(t, "record", y.record())
				require.GreaterOrEqual(t, len(r.Components), c.components)
				found := sheet.FindStringSubmatch(svg(t, r, nil, diagram.Options{}))
				require.NotNil(t, found)
				var units, wide, high float64
				for i, to := range []*float64{&units, &wide, &high} {
					v, err := strconv.ParseFloat(found[i+1], 64)
					require.NoError(t, err)
					*to = v
				}
				assert.LessOrEqual(t, max(wide, high), c.long+0.01)
				assert.LessOrEqual(t, min(wide, high), c.short+0.01)
				const idUnits, point = 10, 25.4 / 72
				assert.GreaterOrEqual(t, wide/units*idUnits/point, 5.5)
			})
		}
	}
}

func BenchmarkDraw(b *testing.B) {
	for name, size := range map[string][2]int{"24": {1, 6}, "120": {6, 8}} {
		y := newYard(seeded(7))
		y.system(size[0], size[1])
		r := decoded(b, name, y.record())
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				_ = svg(b, r, nil, diagram.Options{})
			}
		})
	}
}
