package rules

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
)

// engines returns the same rules twice: read in Go, and left to OPA.
func engines(t testing.TB) (fast, plain *Engine) {
	t.Helper()
	fast, err := New()
	require.NoError(t, err)
	plain, err = New(Plain())
	require.NoError(t, err)
	return fast, plain
}

// readEngine returns the rules with the Rego of all read.
func readEngine(t testing.TB) *Engine {
	t.Helper()
	engine, err := New()
	require.NoError(t, err)
	require.NoError(t, engine.load(engine.rules))
	return engine
}

// solved reads a record and joins its facts.
func solved(t testing.TB, name, text string) (*record.Record, *facts.Document) {
	t.Helper()
	r, faults := record.Decode(name, []byte(text))
	require.Empty(t, faults, "%s is faulty", name)
	return r, facts.Build(r, circuit.Analyse(r))
}

// demos returns the demo records by path.
func demos(t testing.TB) map[string]string {
	t.Helper()
	paths, err := filepath.Glob("../testdata/records/*/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	all := map[string]string{}
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		all[strings.TrimPrefix(path, "../testdata/records/")] = string(text)
	}
	return all
}

// everyRecord returns the demo records and those of all examples, by name.
func everyRecord(t testing.TB, engine *Engine) map[string]string {
	t.Helper()
	all := demos(t)
	for _, r := range engine.rules {
		example, err := engine.Example(r.meta.ID)
		require.NoError(t, err)
		for part, one := range map[string]Part{"breach": example.Breach, "cure": example.Cure, "open": example.Open} {
			if one.Text != "" {
				all[r.meta.ID+" "+part] = one.Text
			}
		}
	}
	return all
}

// judgedAlike judges a record both ways, by the practice that it names and by
// every set that there is.
func judgedAlike(t require.TestingT, fast, plain *Engine, r *record.Record, doc *facts.Document) {
	everything := *doc
	everything.Practice = nil
	for _, set := range fast.Sets() {
		everything.Practice = append(everything.Practice, set.ID)
	}
	for _, doc := range []*facts.Document{doc, &everything} {
		want, err := plain.Judge(r, doc, testDay)
		require.NoError(t, err)
		got, err := fast.Judge(r, doc, testDay)
		require.NoError(t, err)
		require.Len(t, got.Verdicts, len(want.Verdicts))
		assert.Equal(t, want.Counts, got.Counts)
		for i := range want.Verdicts {
			require.Equal(t, want.Verdicts[i], got.Verdicts[i], "%s: %s on %s", r.Name, want.Verdicts[i].Rule.ID, want.Verdicts[i].Subject)
		}
	}
}

// TestRecordsAreJudgedAsByOPAAlone judges the demo records and every record of
// every example by all rules, not only by the one that it shows.
func TestRecordsAreJudgedAsByOPAAlone(t *testing.T) {
	fast, plain := engines(t)
	for name, text := range everyRecord(t, fast) {
		r, doc := solved(t, name, text)
		judgedAlike(t, fast, plain, r, doc)
	}
}

// TestOPANeedsOnlyTheCandidates gives OPA every second subject alone and sees
// that it finds of them what it finds of them among all.
func TestOPANeedsOnlyTheCandidates(t *testing.T) {
	engine := readEngine(t)
	for _, r := range engine.rules {
		maker := newMaker(r)
		for range 5 {
			doc := maker.document(engine)
			maker.takeAway(engine, doc)
			d := engine.list(doc)
			among, err := r.consult(engine.input(d))
			require.NoError(t, err)
			var some []candidate
			for i := range d.subjects[r.of.number] {
				if i%2 == 0 {
					some = append(some, candidate{subject: &d.subjects[r.of.number][i]})
				}
			}
			alone, err := r.consult(r.input(d, some))
			require.NoError(t, err)
			for _, c := range some {
				assert.Equal(t, among.opinion(r, c.id), alone.opinion(r, c.id), "%s on %s", r.meta.ID, c.id)
			}
		}
	}
}

// TestMostBodiesAreUnderstood holds authors to forms that are read in Go. A rule
// in another form is judged as well, but many times slower.
func TestMostBodiesAreUnderstood(t *testing.T) {
	engine := readEngine(t)
	bodies, missed := 0, []string{}
	for _, r := range engine.rules {
		bodies += r.translated().bodies
		missed = append(missed, r.translated().missed...)
	}
	t.Logf("%d of %d bodies are left to OPA:\n%s", len(missed), bodies, strings.Join(missed, "\n"))
	assert.LessOrEqual(t, len(missed)*20, bodies, "more than 5 %% of all bodies are left to OPA:\n%s", strings.Join(missed, "\n"))
	law, err := engine.law()
	require.NoError(t, err)
	for i := range law.clauses {
		assert.False(t, doubtful(law.clauses[i].when), "binding.rego is not understood")
	}
}

// TestRecordsHardlyNeedOPA counts what is left to OPA of the demo records.
func TestRecordsHardlyNeedOPA(t *testing.T) {
	engine := readEngine(t)
	for name, text := range demos(t) {
		r, doc := solved(t, name, text)
		doc = doc.On(testDay)
		w, err := engine.newWriter(r, doc, testDay)
		require.NoError(t, err)
		total, left := 0, map[string]int{}
		for _, r := range engine.rules {
			for i := range w.facts.subjects[r.of.number] {
				total++
				w.site.own = &w.facts.subjects[r.of.number][i]
				if w.inForce[r.slot] != 0 && !r.translated().opine(r, w.site, w.inForce[r.slot], &w.says) {
					left[r.meta.ID]++
				}
			}
		}
		t.Logf("%s: %v of %d", name, left, total)
		assert.LessOrEqual(t, len(left)*200, total, "%s: OPA is asked by too many rules: %v", name, left)
	}
}

// FuzzReadingAgreesWithOPA makes up subjects on and beside the values that a
// rule compares with.
func FuzzReadingAgreesWithOPA(f *testing.F) {
	engine := readEngine(f)
	law, err := engine.law()
	require.NoError(f, err)
	for i := range engine.rules {
		f.Add(uint(i), uint64(i))
	}
	f.Fuzz(func(t *testing.T, number uint, seed uint64) {
		r := engine.rules[number%uint(len(engine.rules))]
		maker := newMaker(r)
		maker.random = rand.New(rand.NewPCG(seed, 0))
		for _, v := range maker.numbers {
			maker.numbers = append(maker.numbers, math.Nextafter(v, math.Inf(1)), math.Nextafter(v, math.Inf(-1)), -v, v*1e20)
		}
		maker.words = append(maker.words, "", "\x00", "é", "M8", "true", "12")
		doc := maker.document(engine)
		maker.takeAway(engine, doc)
		d := engine.list(doc)
		found, err := r.consult(engine.input(d))
		require.NoError(t, err)
		at := engine.newSite(d)
		for i := range d.subjects[r.of.number] {
			at.own = &d.subjects[r.of.number][i]
			agreeOn(t, r, r.translated(), at, r.all(), &found)
			agreeOn(t, r, r.translated(), at, 1+mask(maker.random.IntN(int(r.all()))), &found)
		}
		for part := range slices.Chunk(d.subjects[r.of.number], batch) {
			s := sieve{site: at}
			s.turn(r.of, part)
			sieveAgrees(t, r, r.translated(), &s, 1+mask(maker.random.IntN(int(r.all()))), &found)
			sieveAgrees(t, r, r.translated(), &s, r.all(), &found)
		}
		want, decided := law.read(engine.newSite(d))
		if !decided {
			return
		}
		binds, err := law.consult(engine.input(d))
		require.NoError(t, err)
		assert.Equal(t, binds, want, fmt.Sprintf("%+v", doc.Vessel))
	})
}
