package rules

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/stretchr/testify/require"

	"driploop/model/facts"
	"driploop/model/verdict"
)

// helpers are definitions that the bodies of the tests use.
const helpers = `
limits := {"us-federal": {"v": 12, "w": {"a": 1, "b": 2}}, "uk": {"v": 32.5, "w": {"a": 3}}}

some_v := limits.uk.v

kinds := {"fuse", "breaker"}

list := ["fuse", 12, 32.5, true]

tens := {12: {"a": 5, "b": "fuse"}, 24: {"a": 8}, 2: {"a": 1, "b": "lamp"}}

settled := {"fuse": "uk", "breaker": "us-federal"}

asked := {"fuse": "rated_v", "lamp": "rating_a"}

severities := {"fuse": "caution", "breaker": "danger"}

rows := [{"from": 0, "below": 12, "v": 5}, {"from": 12, "below": 100, "v": 50}]

names := {"fuse": "a fuse", "breaker": false}

labels := {"fuse": "a fuse", "breaker": "a breaker", "lamp": "a lamp", "": "nothing"}

place(first) := "first" if first

place(first) := "branch" if not first

band(v) := "low" if v <= 12

band(v) := "high" if {
	v > 12
	v < 1000
}

rated("us-federal", v) if v >= 12

rated("uk", _)

twice(v) := v * 2

is_fuse(kind) if kind == "fuse"

flag := input.vessel.petrol

petrol if input.vessel.petrol == true

big contains id if {
	some id, d in input.devices
	d.rated_v > 12
}

big contains id if {
	some id, d in input.devices
	d.kind == "breaker"
}

sure_big contains id if {
	some id in big
	input.devices[id].rating_a >= 12
}

per_set contains {"subject": id, "set": "uk"} if {
	some id, d in input.devices
	d.rated_v > 12
}

per_set contains {"subject": id, "set": set} if {
	some id, d in input.devices
	some set in ["us-federal", "uk"]
	d.first
}

strays contains id if {
	some id, d in input.devices
	some o in input.vessel.stray_negatives
	o == d.kind
}

stray := o if {
	some o in input.vessel.stray_negatives
	o != "fuse"
	o != "lamp"
}

is_stray(kind) if {
	some o in input.vessel.stray_negatives
	o == kind
}

odd(x) if {
	x != "uk"
	some o in input.vessel.stray_negatives
	o == "fuse"
}

odd(x) if x == "lamp"

unlike contains o if {
	some o in input.vessel.stray_negatives
	o != "fuse"
}

any_big if {
	some id, d in input.devices
	d.rated_v > 100
}

of_big_kind(kind) if {
	some id, d in input.devices
	d.rated_v > 24
	d.kind == kind
}

default fallback := 7

fallback := 12 if input.vessel.petrol

graded(v) := "low" if {
	v < 12
} else := "high" if {
	v > 24
}

same(v, v)

clear(contains, startswith) := contains if startswith == "fuse"

kinds_there contains d.kind if {
	some id, d in input.devices
	d.rated_v > 12
}

either_of(a, b) if {
	a == "fuse"
	b != "uk"
}

either_of(a, b) if {
	b == "fuse"
	a != "uk"
}

either_of(a, b) if {
	a == "fuse"
	b == "lamp"
}

marks contains "us-federal"

marks contains "uk"
`

// bodies are conditions in every form that rules use, and some that they should
// not: whatever is not understood has to be left to OPA.
var bodies = []string{
	`d.rated_v > 12`, `d.rated_v >= 12`, `d.rated_v < 12`, `d.rated_v <= 12`, `d.rated_v == 12`, `d.rated_v != 12`,
	`12 < d.rated_v`, `12 >= d.rated_v`, `12.0 == d.rated_v`, `d.rated_v == 1.2e1`, `d.rated_v < 32.50000000000000001`, `d.poles > 1.5`, `d.poles == 2`,
	`d.kind == "fuse"`, `d.kind != "fuse"`, `d.kind < "fuse"`, `"fuse" >= d.kind`, `d.kind == ""`, `d.curve == d.kind`, `d.curve > d.kind`,
	`d.rated_v > d.nominal_v`, `d.rated_v == d.nominal_v`, `d.poles < d.rated_v`, `d.rated_v != input.vessel.system_v`,
	`d.first`, `d.first == true`, `d.first == false`, `d.first != false`, `d.first != d.ungrounded`, `d.kind`, `d.rated_v`, `d.curve`,
	`d.kind in {"fuse", "breaker"}`, `d.kind in kinds`, `d.kind in ["fuse"]`, `d.rated_v in {12, 32.5}`, `d.rated_v in list`, `d.kind in list`, `d.first in list`,
	`d.kind in {"a": "fuse", "b": 12}`, `"fuse" in kinds`, `"lamp" in kinds`, `12 in input.vessel.stray_negatives`,
	`not d.kind in kinds`, `not d.kind == "fuse"`, `not d.trip_free`, `not d.first`, `not d.curve in kinds`, `not d.rated_v > 12`, `not d.nothing_v`,
	`c := d.curve; not c in kinds`, `c := d.curve; not c == "fuse"`, `v := d.rated_v; v > 12; v < 32.5`, `v := d.rated_v * 2; v > 24`, `c = d.curve; c == "fuse"`, `d.curve = c; c != "fuse"`,
	`d.kind = "fuse"`, `"fuse" = d.curve`, `d.curve = d.kind`,
	`d.rated_v > limits.uk.v`, `d.rated_v > limits["us-federal"].v`, `d.rated_v > some_v`, `limits.uk.v`, `limits.uk.v > 12`, `limits.uk.v < 12`,
	`names[d.kind]`, `names[d.curve] == "a fuse"`, `names[d.kind] != false`, `not names[d.kind]`, `kinds[d.curve]`, `not kinds[d.curve]`, `x := names[d.curve]; x == false`,
	`list[1] == d.rated_v`, `list[d.poles] == d.rated_v`, `list[d.poles]`, `input.vessel.stray_negatives[0] == "fuse"`,
	`some set, limit in limits; d.rated_v > limit.v`, `some limit in limits; d.rated_v > limit.v`, `some set, _ in limits; d.kind == set`,
	`some set, limit in limits; some k, n in limit.w; d.poles == n; k != "b"`, `some row in rows; d.rated_v >= row.from; d.rated_v < row.below; d.nominal_v > row.v`,
	`some k in kinds; d.curve == k`, `some i, k in list; i == 0; d.kind == k`, `some "uk", limit in limits; d.rated_v > limit.v`, `some x in [d.rated_v, d.nominal_v]; x > 12`,
	`some x in {d.rated_v, d.nominal_v}; x > 12`, `some x in {"a": d.rated_v, "b": d.nominal_v}; x > 12`, `some o in input.vessel.stray_negatives; o == "fuse"`, `some o in d.curve; o == "fuse"`,
	`some x; limits[x].v > d.rated_v`, `limits[x].v > d.rated_v`, `some x; x = d.rated_v; x > 12`,
	`some o in input.vessel.stray_negatives`, `some o in input.vessel.stray_negatives; d.first`, `some o in input.vessel.stray_negatives; o in kinds`, `some o in input.vessel.stray_negatives; not o in kinds`,
	`some o in input.vessel.stray_negatives; names[o] == "a fuse"`, `some o in input.vessel.stray_negatives; some p in input.vessel.stray_negatives; o < p`, `some i, o in input.vessel.stray_negatives; i == 1; o == "uk"`,
	`some o in input.vessel.stray_negatives; o == d.curve; not o == d.kind`, `d.kind in input.vessel.stray_negatives`, `not d.kind in input.vessel.stray_negatives`, `d.curve in input.vessel.stray_negatives`,
	`id in strays`, `not id in strays`, `stray == "uk"`, `not stray == "uk"`, `stray`, `is_stray(d.kind)`, `not is_stray(d.kind)`, `some o in input.vessel.stray_negatives; is_stray(o)`,
	`some o in input.vessel.stray_negatives; startswith(o, "fu")`, `x := [o | some o in input.vessel.stray_negatives]; count(x) > 1`,
	`place(d.first) == "first"`, `place(d.first) == "branch"`, `band(d.rated_v) == "low"`, `band(d.rated_v) != "low"`, `band(d.rated_v)`, `not band(d.system_v)`, `not is_fuse(d.kind)`, `not is_fuse(d.curve)`,
	`x := band(d.rated_v); y := place(d.first); x == "high"; y == "first"`, `concat(", ", [place(d.first), band(d.rated_v)]) == "first, low"`,
	`rated("us-federal", d.rated_v)`, `rated("uk", d.rated_v)`, `some set, _ in limits; rated(set, d.rated_v)`, `rated(d.kind, 12)`, `twice(d.rated_v) > d.nominal_v`, `twice(d.poles) == 4`,
	`d.rated_v * 2 > 24`, `d.rated_v + d.nominal_v > 24`, `d.rated_v - d.nominal_v == 0`, `d.rated_v * 0.1 == 1.2`, `d.rated_v / 2 > 6`, `d.rated_v * d.nominal_v >= 144`, `0 - d.rated_v < -12`,
	`flag`, `flag == false`, `flag != true`, `petrol`, `not petrol`, `input.vessel.petrol`, `not input.vessel.detector`, `input.vessel.length_mm > 12`, `input.job.kind == "fuse"`, `input.vessel.system_v > d.rated_v`,
	`id in big`, `not id in big`, `id in sure_big`, `big[id]`, `not big[id]`, `x := id; x in big`, `"fuse" in big`, `{"subject": id, "set": "uk"} in per_set`, `{"subject": id, "set": "eu"} in per_set`,
	`some set in ["us-federal", "uk"]; {"subject": id, "set": set} in per_set`, `per_set[{"subject": id, "set": "us-federal"}]`, `not {"subject": id, "set": "uk"} in per_set`,
	`some m in marks; m == "uk"; d.first`, `d.kind in marks`, `not d.kind in marks`,
	`[d.kind, d.curve] == ["fuse", "breaker"]`, `{"a": d.kind} == {"a": "fuse"}`, `{"a": d.kind} != {"a": "fuse"}`, `{d.kind} == {"fuse"}`,
	`is_string(d.curve)`, `is_number(d.curve)`, `not is_number(d.rated_v)`, `is_boolean(d.first)`, `count(input.vessel.stray_negatives) > 0`, `startswith(d.kind, "fu")`, `contains(d.curve, "us")`, `endswith(d.curve, d.kind)`, `not contains(d.kind, "e")`, `x := contains(d.kind, "u"); x == false`, `not startswith(d.kind, "fu")`, `count(kinds) == 2`, `max(list) == "fuse"`,
	`x := d.rated_v > 12; x == false`, `x := d.rated_v > 12; x`, `x := d.kind in kinds; not x`, `(d.rated_v > 12) == d.first`,
	`x := [k | some k in kinds; k == d.kind]; count(x) == 1`, `every k in kinds { k != d.kind }`, `d.first == null`, `null == d.curve`, `d.kind == 12`, `d.kind != 12`, `d.kind > 12`,
	`x := {"v": d.rated_v}; x.v > 12`, `x := [d.rated_v, d.kind]; x[1] == "fuse"`, `y := {"k": d.curve}; not y.k in kinds`, `[a, b] := [d.rated_v, 12]; a > b`, `{"a": a} = {"a": d.rated_v}; a > 12`,
	`some kinds, limit in limits; kinds == "uk"; d.rated_v > limit.v`, `flag := d.first; flag`, `big := d.rated_v; big > 12`, `some limits in ["uk", "fuse"]; d.kind == limits`,
	`some one in per_set; one.set == "uk"; one.subject == id`, `some one in per_set; one.subject == id; input.devices[one.subject].first`,
	`some o in input.vessel.stray_negatives; odd(o)`, `some o in input.vessel.stray_negatives; not odd(o)`, `odd(d.kind)`, `fallback == 7`, `fallback < d.rated_v`, `not fallback == 12`, `graded(d.rated_v) == "high"`, `graded(d.rated_v)`, `not graded(d.rated_v)`, `d.kind in unlike`, `not d.kind in unlike`,
	`any_big`, `not any_big`, `of_big_kind(d.kind)`, `not of_big_kind(d.kind)`, `count(big) > 3`, `some other, e in input.devices; e.rated_v > d.rated_v`, `some e in input.devices; e.first; d.ungrounded`,
	`some other in big; input.devices[other].first`, `other := "d1"; input.devices[other].first`, `input.devices.d1.first`, `some other in big; other != id`, `some e in input.devices; not e.kind == d.kind; e.kind == "fuse"`,
	`d.poles > 9007199254740992`, `d.poles == 9007199254740993`, `d.rated_v + d.nominal_v > 0.3`, `d.rated_v + d.nominal_v == 0.3`, `d.nominal_v - d.rated_v < 0.1`,
	`same(d.rated_v, d.nominal_v)`, `same(d.kind, d.curve)`, `not same(d.kind, "fuse")`, `same(12, 12)`, `same("fuse", "lamp")`, `clear(d.curve, d.kind) == "lamp"`,
	`lt(d.rated_v, 12, false)`, `lt(d.rated_v, 12, true)`, `startswith(d.kind, "fu", false)`, `equal(d.kind, "fuse", false)`, `plus(1, 2, 4)`, `plus(1, 2, 3)`, `plus(d.rated_v, 1, 13)`, `count(kinds, 3)`, `is_string(d.kind, false)`, `not lt(d.system_v, 12, false)`,
	`d.kind in kinds_there`, `not d.kind in kinds_there`, `some k in kinds_there; k == d.kind`, `kinds_there[d.kind]`,
	`some o in input.vessel.stray_negatives; some p in input.vessel.stray_negatives; either_of(o, p)`, `some o in input.vessel.stray_negatives; some p in input.vessel.stray_negatives; either_of(o, p); p == "lamp"; o == "lamp"`,
	`some o in input.vessel.stray_negatives; some p in input.vessel.stray_negatives; o == "uk"; p == "uk"; o != "fuse"; p == "fuse"`,
	`d.rated_v * d.nominal_v > 0`, `d.rated_v * d.nominal_v == 0`, `d.rated_v * d.rated_v != 0`,
	`d.kind > 12; d.first`, `d.first > "fuse"`, `d.rated_v < "fuse"`, `d.rated_v < true`, `null < d.rated_v`, `d.kind < {"a": 1}`, `input.vessel.stray_negatives > "fuse"`, `input.vessel.stray_negatives == []`, `input.vessel.stray_negatives != ["fuse"]`, `count(input.vessel.stray_negatives) == 0`,
	`every o in input.vessel.stray_negatives { o != "uk" }`, `every x in [] { x > d.rated_v }`, `x := {k | some k in kinds; k != d.kind}; count(x) == 1`, `x := {k: 1 | some k in kinds}; x[d.kind] == 1`, `not d.kind in {k | some k in kinds}`, `d.kind in {d.curve, "lamp"}`, `not d.kind in [d.curve]`,
	`some x in []; x == d.kind`, `some x in {}; x == d.kind`, `d.kind in []`, `not d.kind in []`, `[] != [d.kind]`, `{"a": {"b": d.kind}}.a.b == "fuse"`, `some k, k in list; k == d.kind`, `x := {"a": {"b": d.kind}}; x.a[d.curve] == "fuse"`, `x := {"a": {"b": d.kind}}; not x.a[d.kind]`,
	`d.rated_v == "12"`, `d.kind == 12`, `d.rated_v in {"12", "32.5"}`, `d.kind in {12, 24}`, `d.rated_v == 12.000000000000000000001`, `d.poles == 2.0`, `d.poles in {1, 2.0, 3}`, `d.poles == d.nominal_v`, `limits[d.kind].v > 12`, `limits[d.curve].w.a == d.poles`, `not limits[d.kind].w.b`,
	`tens[d.rated_v].a < d.nominal_v`, `tens[d.poles].b == d.kind`, `not tens[d.poles].b`, `x := {12: d.kind}; x[d.poles] == "fuse"`, `some n, row in tens; n <= d.rated_v; row.a > d.nominal_v`,
	`max([12, d.rated_v]) > d.nominal_v`, `min({12, d.rated_v}) == d.nominal_v`, `d.rated_v <= min([x | some x in [1, 5, 12, 24]; x >= d.nominal_v])`, `min([x | some x in [1, 5, 12, 24]; x >= d.nominal_v])`, `count([x | some x in [1, 1, 5]; x >= d.nominal_v]) == 2`, `max([x | some x in list; x != d.kind]) == true`,
	`x := max([d.rated_v, d.kind]); x == d.kind`, `x := min([d.curve, d.kind]); x < "g"; not x == "fuse"`, `not max([d.rated_v, 12]) > d.system_v`, `concat("", [d.kind, "x"]) > d.curve`, `concat("", [d.kind, d.curve]) in {"fusefuse", "lamp"}`, `count(input.vessel.stray_negatives) > d.poles`, `concat(" ", input.vessel.stray_negatives) == "fuse"`,
	`some o in input.vessel.stray_negatives; concat("", [o, "x"]) > d.kind`, `some o in input.vessel.stray_negatives; min([x | some x in ["fuse", "uk"]; x >= o]) == d.kind`, `next := min([x | some x in [1, 5, 12, 24]; x >= d.nominal_v]); d.rated_v > min({next, d.nominal_v * 1.5})`, `d.rated_v * 2 >= d.nominal_v + 12`, `d.rated_v - d.nominal_v <= 0`,
	`max([d.rated_v * 0.1, d.nominal_v]) == 1.2`, `x := [d.kind | some e in input.devices; e.first]; count(x) > 1`, `max([x | some x in input.vessel.stray_negatives]) == d.kind`, `max([e.rated_v | some e in input.devices]) > d.rated_v`, `max([]) > d.rated_v`, `min({d.kind}) == "fuse"`, `max({d.rated_v, d.nominal_v, 12}) <= 24`,
	`lower(d.kind) == "fuse"`, `sprintf("%s", [d.kind]) == "fuse"`, `to_number("12") == d.rated_v`, `abs(d.rated_v) > 12`, `max([d.rated_v, 12]) > 12`, `format_int(d.poles, 10) == "2"`, `object.get(limits, d.kind, {"v": 0}).v > 12`, `object.get(limits, "uk", 0).v == d.rated_v`,
	`true`, `false`, `not false`, `not true`, `1 == 1`, `x := 1; x == 2`, `false == d.first`, `d.first; d.ungrounded; d.rated_v > d.nominal_v; d.kind in kinds`,
}

// heads give each part of a rule around a body, whatever the body.
var heads = map[string][]string{
	"breach": {
		`breach contains {"subject": id, "set": "uk", "figures": {"v": d.rated_v, "k": labels[d.kind]}, "limit": {}} if`,
		`breach contains {"subject": id, "figures": {"w": limits["us-federal"].w.a}, "severity": severities[d.curve]} if`,
		`breach contains {"subject": id, "set": "us-federal", "figures": {"v": d.rated_v * 2, "b": band(d.rated_v)}} if`,
		`breach contains {"subject": id, "figures": {"c": concat(" ", ["of", d.curve]), "m": max([d.rated_v, 12])}, "limit": limits.uk.w} if`,
		`breach contains {"subject": id, "set": "uk", "figures": {"id": id, "d": d.rated_v - d.nominal_v, "n": concat("", [labels[d.kind], id])}} if`,
	},
	"applies":  {`applies contains {"subject": id, "set": "uk"} if`, `applies contains id if`, `applies contains {"subject": id, "set": settled[d.kind]} if`},
	"excludes": {`excludes contains id if`, `excludes contains {"subject": id, "set": "us-federal"} if`},
	"asks": {
		`asks contains {"subject": id, "set": "uk", "fact": "rated_v"} if`, `asks contains {"subject": id, "fact": "rating_a"} if`,
		`asks contains {"subject": id, "fact": asked[d.curve]} if`,
	},
}

// part writes one definition of a part of a rule.
func part(head, body string) string {
	return fmt.Sprintf("\n%s {\n\tsome id, d in input.devices\n\t%s\n}\n", head, strings.ReplaceAll(body, "; ", "\n\t"))
}

// formRule returns a rule of some parts. It is not checked: what is read in Go
// has to agree with OPA on whatever OPA compiles.
func formRule(t *testing.T, kinds map[string]*collection, parts string) *rule {
	t.Helper()
	text := "package driploop.rules.made.up\n" + helpers + parts
	module, err := ast.ParseModuleWithOpts("made/up.rego", text, ast.ParserOptions{Capabilities: capabilities()})
	require.NoError(t, err)
	of := kinds["devices"]
	r := &rule{
		file: "made/up.rego", mod: module, of: of, sets: []string{"us-federal", "uk"}, hasApplies: true, hasExcludes: true, hasAsks: true,
		asks: []need{{name: "rated_v", of: of, fact: operandOf(of, of, of.facts["rated_v"])}, {name: "rating_a", of: of, fact: operandOf(of, of, of.facts["rating_a"])}},
		meta: verdict.Rule{ID: "made/up", Severity: verdict.Danger},
	}
	r.query = queryOf(r.file, module, r.parts(), capabilities())
	return r
}

// near are values near those that the bodies compare with, and odd ones.
var near = []float64{
	0, math.Copysign(0, -1), 1, 2, 3, 5, 6, 11, 12, math.Nextafter(12, 13), math.Nextafter(12, 11), 24, 32.5, math.Nextafter(32.5, 0), math.Nextafter(32.5, 99),
	50, 100, 0.1, 0.2, 0.3, 1e21, 1e-7, 1e300, -12, 4503599627370497.5, math.SmallestNonzeroFloat64, math.MaxFloat64,
}

var words = []string{"", "fuse", "fuse ", "Fuse", "breaker", "lamp", "uk", "us-federal", "é", "\x00", "12", "true"}

func maybeOf[T any](random *rand.Rand, values []T) *T {
	if random.IntN(4) == 0 {
		return nil
	}
	return ptr(values[random.IntN(len(values))])
}

// oddDevices makes up devices with all that the bodies read.
func oddDevices(random *rand.Rand, n int) *facts.Document {
	bools := []bool{true, false}
	doc := &facts.Document{
		Vessel: &facts.Vessel{
			Petrol: maybeOf(random, bools), Detector: maybeOf(random, bools), LengthMM: maybeOf(random, near), SystemV: near[random.IntN(len(near))], StrayNegatives: [][]string{{}, {"fuse"}, {"lamp", "uk"}, {"uk", "fuse"}, {"fuse", "lamp", "uk"}, {"uk", "fuse", "lamp"}}[random.IntN(6)],
		},
		Job:     &facts.Job{Kind: maybeOf(random, words)},
		Devices: map[string]*facts.Device{},
	}
	for i := range n {
		doc.Devices["d"+strconv.Itoa(i)] = &facts.Device{
			Kind: words[random.IntN(len(words))], Curve: maybeOf(random, words), RatedV: maybeOf(random, near), NominalV: maybeOf(random, near),
			RatingA: maybeOf(random, near), First: maybeOf(random, bools), Ungrounded: maybeOf(random, bools), TripFree: maybeOf(random, bools),
			Poles: maybeOf(random, []int{-1, 0, 1, 2, 3, 1 << 53, 1<<53 + 1, math.MaxInt}), Opens: maybeOf(random, words),
		}
	}
	return doc
}

// TestEveryFormAgreesWithOPA compares, for bodies in all forms, what is read in
// Go with what OPA finds on odd subjects.
func TestEveryFormAgreesWithOPA(t *testing.T) {
	engine := soundEngine(t)
	random := rand.New(rand.NewPCG(7, 7))
	for _, body := range bodies {
		t.Run(body, func(t *testing.T) {
			parts := ""
			for _, name := range []string{"breach", "applies", "excludes", "asks"} {
				parts += part(heads[name][0], body)
			}
			r := formRule(t, engine.kinds, parts)
			read := translate(r, engine.kinds)
			for range 12 {
				agree(t, engine, r, read, oddDevices(random, 12))
			}
		})
	}
}

// TestShadowedFunctionsAreLeftToOPA gives functions of OPA another meaning.
func TestShadowedFunctionsAreLeftToOPA(t *testing.T) {
	engine := soundEngine(t)
	random := rand.New(rand.NewPCG(7, 8))
	for _, definition := range []string{
		`startswith(a, b) if a == b`, `lt(a, b) if a > b`, `equal(a, b) if a != b`, `plus(a, _) := a`, `count(_) := 7`, `is_string(_) := false`, `max := 12`,
	} {
		for _, body := range []string{`startswith(d.kind, "fu")`, `d.rated_v < 12`, `lt(d.rated_v, 12)`, `d.kind == "fuse"`, `plus(d.rated_v, 1) > 12`, `count(kinds) == 2`, `is_string(d.kind)`} {
			parts := "\n" + definition + "\n"
			for _, name := range []string{"breach", "applies", "excludes", "asks"} {
				parts += part(heads[name][0], body)
			}
			r := formRule(t, engine.kinds, parts)
			if _, err := r.query.prepared(); err != nil {
				continue // OPA does not take it
			}
			agree(t, engine, r, translate(r, engine.kinds), oddDevices(random, 12))
		}
	}
}

// FuzzMixedFormsAgreeWithOPA does the same for rules whose parts have several
// definitions, each of two bodies under any head.
func FuzzMixedFormsAgreeWithOPA(f *testing.F) {
	for seed := range uint64(250) {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, seed uint64) {
		engine := soundEngine(t)
		random := rand.New(rand.NewPCG(seed, 1))
		parts := ""
		for _, name := range []string{"breach", "applies", "excludes", "asks"} {
			for range 1 + random.IntN(3) {
				body := bodies[random.IntN(len(bodies))] + "; " + bodies[random.IntN(len(bodies))]
				parts += part(heads[name][random.IntN(len(heads[name]))], body)
			}
		}
		r := formRule(t, engine.kinds, parts)
		if _, err := r.query.prepared(); err != nil {
			t.Skip("two bodies give one variable two values")
		}
		agree(t, engine, r, translate(r, engine.kinds), oddDevices(random, 40))
		if t.Failed() {
			t.Log(parts)
		}
	})
}
