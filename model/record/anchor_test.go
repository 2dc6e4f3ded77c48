package record

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/verdict"
)

func TestMergeKeysBringWhatIsNotWritten(t *testing.T) {
	text := head + `spaces:
  base: &base {kind: locker, exposure: dry, ambient: 30 degC}
  wet: &wet {exposure: wet, open_to_air: true}
  one: {<<: *base, exposure: damp}
  two:
    kind: helm
    <<: [*wet, *base]
  three: {<<: {kind: bilge, exposure: immersed}, exposure: wet}
  four:
    <<: *two-in-turn
    kind: tank
`
	text = strings.Replace(text, "  two:\n", "  two: &two-in-turn\n", 1)
	r, faults := Decode("r", []byte(text))
	require.Empty(t, faults)
	for id, want := range map[string]string{
		"one": "locker damp 30 °C", "two": "helm wet 30 °C", "three": "bilge wet", "four": "tank wet 30 °C",
	} {
		s := r.Space(id)
		got := s.Kind.V + " " + s.Exposure.V
		if a, ok := s.Ambient.Get(); ok {
			got += " " + a.String()
		}
		assert.Equal(t, want, got, id)
	}
	assert.Equal(t, []string{"base", "wet", "one", "two", "three", "four"}, ids(r.Spaces))

	// What is merged stands where it is written: there it can be put right.
	assert.Equal(t, r.Space("base").Ambient.At(), r.Space("one").Ambient.At())
	assert.Equal(t, r.Places.At("spaces.base.ambient"), r.Places.At("spaces.one.ambient"))
	assert.Equal(t, span4(7, 20, 7, 28), r.Places.At("spaces.one.exposure"))
}

func TestAliasesStandForWhatTheyName(t *testing.T) {
	text := head + `spaces: {bow: {kind: locker}}
components: {house: {kind: battery}, f: {kind: fuse, rating: &r 40 A}, g: {kind: fuse, rating: *r}}
conductors:
  P1: &p1
    from: house.pos
    to: f.line
    role: positive
    route: &route
      - &first {space: bow, length: 1 m}
      - {space: bow, length: 2 m}
  P2: {<<: *p1, to: g.line, route: *route}
  P3: {from: house.pos, to: g.line, role: positive, route: [*first, {space: bow, length: 3 m}]}
`
	r, faults := Decode("r", []byte(text))
	require.Empty(t, faults)
	assert.Equal(t, "40 A", r.Component("g").Rating.V.String())
	assert.Equal(t, "g.line", r.Conductor("P2").To.String())
	assert.Len(t, r.Conductor("P2").Route, 2)
	assert.Equal(t, "2 m", r.Conductor("P2").Route[1].Length.V.String())
	assert.Equal(t, "1 m", r.Conductor("P3").Route[0].Length.V.String())
	assert.Equal(t, "conductors.P3.route[0]", r.Conductor("P3").Route[0].Path)

	// An alias of a value is the place of use; what stands within an alias of
	// a mapping is where it is written.
	assert.Equal(t, "*r", cut(text, r.Component("g").Rating.At()))
	assert.Equal(t, "*first", cut(text, r.Conductor("P3").Route[0].At))
	assert.Equal(t, "1 m", cut(text, r.Conductor("P3").Route[0].Length.At()))
	assert.Equal(t, "*route", cut(text, mustPlace(t, r, text, "conductors.P2.route")))
}

// mustPlace returns the range behind the key of a path.
func mustPlace(t *testing.T, r *Record, text, path string) (at verdict.Range) {
	t.Helper()
	key, ok := r.Places.Find(path)
	require.True(t, ok)
	at.Start = key.End
	at.Start.Column += 2
	at.End = at.Start
	for strings.TrimSpace(cut(text, at)) == "" || !strings.ContainsAny(cut(text, at), ",}") {
		at.End.Column++
	}
	at.End.Column--
	return at
}

func TestAFaultInAnAnchoredPartIsReportedOnce(t *testing.T) {
	_, faults := Decode("r", []byte(head+"spaces:\n  a: &a {knd: locker}\n  b: {<<: *a}\n  c: *a\n"))
	assert.Equal(t, []string{`r:5:10: "knd" is no key of a space; did you mean "kind"?`}, strings.Split(faults.Error(), "\n"))
}

func TestFaultsOfAliases(t *testing.T) {
	for _, c := range []faulty{
		{"a mapping that merges itself", head + "spaces:\n  a: &a {<<: *a, kind: locker}\n", []string{
			`5:10: mappings merge into each other more than 16 deep; write one of them out`,
		}},
		{"mappings that merge each other", head + "spaces:\n  a: &a\n    kind: locker\n    <<: &b {<<: *a}\n", []string{
			`7:5: mappings merge into each other more than 16 deep; write one of them out`,
		}},
		{"a list within itself", head + "practice: &p [*p]\n", []string{
			`4:15: an item of "practice" is a list; write plain values, such as [us-federal, workmanship]`,
		}},
		{"a merge of a list of texts", head + "spaces: {a: {<<: [x, y]}}\n", []string{
			`4:14: "<<" takes a mapping or a list of mappings by alias, such as "<<: *name"; here stands the text "x"`,
			`4:14: "<<" takes a mapping or a list of mappings by alias, such as "<<: *name"; here stands the text "y"`,
		}},
	} {
		t.Run(c.name, c.check)
	}
}

// bomb returns lists that name the one before nine times, as deep as asked.
func bomb(depth int, before, after, lead string) string {
	var b strings.Builder
	b.WriteString("  a0: &a0 " + before + lead + after + "\n")
	for i := 1; i < depth; i++ {
		alias := fmt.Sprintf("*a%d, ", i-1)
		fmt.Fprintf(&b, "  a%d: &a%d %s%s%s\n", i, i, before, strings.TrimSuffix(strings.Repeat(alias, 9), ", "), after)
	}
	return b.String()
}
