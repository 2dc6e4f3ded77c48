package record

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestEveryKindPlaysOnePart(t *testing.T) {
	for _, k := range Kinds() {
		parts := 0
		for _, is := range []bool{k.Source, k.Load, k.Protective, k.Switching, k.Passive} {
			if is {
				parts++
			}
		}
		assert.Equal(t, 1, parts, k.Name)
		assert.NotEmpty(t, k.Says, k.Name)
		assert.True(t, len(k.Terminals) > 0 || k.OneNode || k.ByLinks, "%s has terminals", k.Name)
		assert.Equal(t, k, KindOf(k.Name))
	}
	assert.Equal(t, Kind{}, KindOf("windmill"))
	assert.True(t, KindOf("pump").Load)
	assert.True(t, KindOf("alternator").Source)
	assert.True(t, KindOf("fuse").Protective)
	assert.True(t, KindOf("controller").Switching)
	assert.True(t, KindOf("busbar").OneNode)
}

func TestTerminalsOfAComponent(t *testing.T) {
	for text, want := range map[string][]string{
		"{kind: battery}":    {"pos", "neg"},
		"{kind: breaker}":    {"line", "load"},
		"{kind: pump}":       {"pos", "neg", "case"},
		"{kind: switch}":     {"in", "out", "case"},
		"{kind: relay}":      {"case"},
		"{kind: connector}":  {"in", "out"},
		"{kind: controller}": {"case"},
		"{kind: switch, links: [{between: [house, common], when: one}, {between: [engine, common], when: two}]}":  {"house", "common", "engine", "case"},
		"{kind: relay, links: [{between: [supply, motor-a], when: up}], coils: [{between: [up, neg], when: up}]}": {"supply", "motor-a", "up", "neg", "case"},
		"{kind: busbar, posts: {a: {stud: M8}}}": {"a"},
	} {
		r, faults := Decode("r", []byte(head+"components: {x: "+text+"}\n"))
		require.Empty(t, faults, text)
		names, open := TerminalsOf(r.Component("x"))
		assert.Equal(t, want, names, text)
		assert.Equal(t, KindOf(r.Component("x").Kind.V).OneNode, open, text)
		for _, name := range []string{"in", "out", "pos", "neg", "line", "load", "house", "engine", "common", "supply", "motor-a", "up", "case", "a", "b"} {
			assert.Equal(t, open || slices.Contains(names, name), hasTerminal(r.Component("x"), KindOf(r.Component("x").Kind.V), name), "%s: %s", text, name)
		}
	}
}

func TestKeysOfAComponentDependOnItsKind(t *testing.T) {
	keys := func(kind string) []string { return componentTable().keysFor(kindIndex(kind)) }
	assert.Contains(t, keys("battery"), "chemistry")
	assert.NotContains(t, keys("alternator"), "chemistry")
	assert.Contains(t, keys("alternator"), "output")
	assert.Contains(t, keys("heater"), "resistance")
	assert.NotContains(t, keys("heater"), "stall")
	// Under one name on any one kind there is one field.
	for i, k := range kindTable() {
		seen := map[string]bool{}
		for _, f := range componentTable().fields {
			if f.kinds.has(i) {
				assert.False(t, seen[f.key], "%s of a %s", f.key, k.Name)
				seen[f.key] = true
			}
		}
	}
}

func TestARecordWithFaultsIsFilledAsFarAsItCanBeRead(t *testing.T) {
	r, faults := Decode("r", []byte(head+`components:
  house: {kind: battery, capacity: lots, cranking: 720 A}
  pump: {kind: pmup, current: 5 A}
conductors:
  P1: {from: house.pos, to: nowhere, role: positive, length: 2 m}
`))
	assert.Len(t, faults, 3)
	assert.Equal(t, "720 A", r.Component("house").Cranking.V.String())
	assert.False(t, r.Component("house").Capacity.Is())
	assert.Equal(t, "5 A", r.Component("pump").Current.V.String())
	assert.Equal(t, "house.pos", r.Conductor("P1").From.String())
	assert.Equal(t, "2 m", r.Conductor("P1").Length.V.String())
	assert.Len(t, r.SHA256, 64)
	assert.Equal(t, "r", r.Name)
}

func TestPracticeDefaults(t *testing.T) {
	r, faults := Decode("r", []byte(head))
	require.Empty(t, faults)
	assert.Equal(t, []string{"us-federal", "workmanship"}, r.Practice.V)
	assert.True(t, r.Practice.Is())
	r, faults = Decode("r", []byte(head+"practice: [uk]\n"))
	require.Empty(t, faults)
	assert.Equal(t, []string{"uk"}, r.Practice.V)
}

func TestAListWithAnUnknownItemIsUnknown(t *testing.T) {
	r, faults := Decode("r", []byte(head+"bundles: {B: {members: [unknown]}}\npenetrations: {p: {seal: {grips: [6 mm, unknown]}, bedding: {on: [frp, unknown]}}}\n"))
	require.Empty(t, faults)
	assert.Equal(t, Unknown, r.Bundle("B").Members.State)
	assert.Equal(t, Unknown, r.Penetrations[0].Seal.Grips.State)
	assert.Equal(t, Unknown, r.Penetrations[0].Bedding.On.State)
	assert.Equal(t, []string{"frp"}, r.Penetrations[0].Bedding.On.V)
}

func TestAPartThatIsUnknownLeavesAllItsValuesUnknown(t *testing.T) {
	r, faults := Decode("r", []byte(head+`components: {a: {kind: battery}, b: {kind: pump}}
conductors:
  P1: {from: a.pos, to: b.pos, role: positive, ends: {from: unknown, to: {crimp: unknown}}}
  P2: {from: a.pos, to: b.pos, role: positive, colour: unknown, size: unknown, ends: unknown}
`))
	require.Empty(t, faults)
	p1, p2 := r.Conductor("P1"), r.Conductor("P2")
	assert.Equal(t, Unknown, p1.Ends.From.Hole.State)
	assert.Equal(t, Unknown, p1.Ends.From.Crimp.Tool.State)
	assert.Equal(t, "conductors.P1.ends.from.crimp", p1.Ends.From.Crimp.Path)
	assert.Equal(t, Absent, p1.Ends.To.Hole.State)
	assert.Equal(t, Unknown, p1.Ends.To.Crimp.Pull.State)
	assert.Equal(t, Unknown, p2.Ends.To.Torque.State)
	assert.Equal(t, Unknown, p2.Size.State)
	assert.Equal(t, Unknown, p2.Colour.State)
}

func TestNearest(t *testing.T) {
	for written, want := range map[string]string{"busbr": "busbar", "BUSBAR": "busbar", "fuze": "fuse", "kontroller": "controller", "x": "", "": "", "battery-bank": ""} {
		got, _ := nearest(written, []string{"busbar", "fuse", "controller", "battery"})
		assert.Equal(t, want, got, written)
	}
}
