package rules

import (
	"math"
	"math/rand/v2"
	"reflect"
	"strconv"
	"testing"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/facts"
	"driploop/model/verdict"
)

// TestKnowingLessDecidesNothingElse makes up subjects in which every fact is
// known, near the values that a rule compares with, takes facts away, and sees
// that each outcome stays or becomes undecided. A rule whose "asks" is too
// narrow fails here: what was a breach turns into met.
func TestKnowingLessDecidesNothingElse(t *testing.T) {
	engine := readEngine(t)
	for _, r := range engine.rules {
		t.Run(r.meta.ID, func(t *testing.T) {
			maker := newMaker(r)
			seen := map[verdict.Outcome]int{}
			for round := 0; round < 30 || seen[verdict.Breach] < 5 && round < 1000; round++ {
				doc := maker.document(engine)
				before := outcomesOf(t, engine, r, doc)
				taken := maker.takeAway(engine, doc)
				after := outcomesOf(t, engine, r, doc)
				for id, was := range before {
					seen[was.outcome]++
					now := after[id]
					if now.outcome != was.outcome && now.outcome != verdict.Undecided {
						t.Fatalf("%s without %v turns from %s into %s", id, taken[id], was.outcome, now.outcome)
					}
				}
			}
			assert.Zero(t, seen[verdict.Undecided], "everything is known")
			assert.NotZero(t, seen[verdict.Breach], "no breach was made up: the test says nothing of this rule")
		})
	}
}

// outcomesOf judges every subject of the rule by all of its practice sets, as
// OPA finds, and sees that what is read in Go agrees.
func outcomesOf(t *testing.T, engine *Engine, r *rule, doc *facts.Document) map[string]judged {
	t.Helper()
	d := engine.list(doc)
	f, err := r.consult(engine.input(d))
	require.NoError(t, err)
	all := map[string]judged{}
	at := engine.newSite(d)
	for i := range d.subjects[r.of.number] {
		s := &d.subjects[r.of.number][i]
		at.own = s
		agreeOn(t, r, r.translated(), at, r.all(), &f)
		says := f.opinion(r, s.id)
		all[s.id] = r.judge(at, r.all(), &says)
	}
	return all
}

// maker makes up facts near what a rule compares them with.
type maker struct {
	rule    *rule
	random  *rand.Rand
	words   []string
	numbers []float64
}

func newMaker(r *rule) *maker {
	m := &maker{rule: r, random: rand.New(rand.NewPCG(1, 2)), words: []string{"other", "2026-01-01", "2026-12-31"}, numbers: []float64{0, 1, 1000}}
	ast.WalkTerms(r.mod, func(term *ast.Term) bool {
		switch v := term.Value.(type) {
		case ast.String:
			m.words = append(m.words, string(v))
		case ast.Number:
			if n, ok := v.Float64(); ok {
				m.numbers = append(m.numbers, n-1, n, n+1)
			}
		}
		return false
	})
	return m
}

// document makes up a document in which every fact is known.
func (m *maker) document(engine *Engine) *facts.Document {
	doc := &facts.Document{Format: facts.Format}
	value := reflect.ValueOf(doc).Elem()
	for _, kind := range engine.kinds {
		field := value.Field(kind.field)
		if kind.single {
			field.Set(m.subject(field.Type().Elem(), kind.name))
			continue
		}
		if kind != m.rule.of {
			continue
		}
		field.Set(reflect.MakeMap(field.Type()))
		for i := range 20 {
			id := "s" + strconv.Itoa(i)
			field.SetMapIndex(reflect.ValueOf(id), m.subject(field.Type().Elem().Elem(), id))
		}
	}
	return doc
}

func (m *maker) subject(of reflect.Type, id string) reflect.Value {
	made := reflect.New(of)
	for _, f := range factsOf(of) {
		m.fill(made.Elem().FieldByIndex(f.index))
	}
	made.Interface().(based).Base().Path = id
	derive(made.Interface())
	return made
}

// derive keeps what facts owe each other, where a rule relies on it.
func derive(subject any) {
	test, ok := subject.(*facts.Test)
	if !ok {
		return
	}
	if test.ComputedDropV == nil || test.ToleranceV == nil {
		test.AllowedDropV = nil
		return
	}
	allowed := *test.ComputedDropV + math.Abs(*test.ToleranceV)
	test.AllowedDropV = &allowed
}

func (m *maker) fill(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		m.fill(v.Elem())
	case reflect.String:
		v.SetString(m.words[m.random.IntN(len(m.words))])
	case reflect.Bool:
		v.SetBool(m.random.IntN(2) == 0)
	case reflect.Int:
		v.SetInt(int64(m.numbers[m.random.IntN(len(m.numbers))]))
	case reflect.Float64:
		v.SetFloat(m.numbers[m.random.IntN(len(m.numbers))])
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), m.random.IntN(3), 3))
		for i := range v.Len() {
			m.fill(v.Index(i))
		}
	default:
		panic("knowledge test: cannot make up a " + v.Kind().String())
	}
}

// takeAway removes some of the facts that may be missing and says which.
func (m *maker) takeAway(engine *Engine, doc *facts.Document) map[string][]string {
	d := engine.list(doc)
	taken := map[string][]string{}
	for _, kind := range engine.kinds {
		if !kind.single && kind != m.rule.of {
			continue
		}
		for _, s := range d.subjects[kind.number] {
			for _, f := range kind.order {
				if f.optional && m.random.IntN(3) == 0 {
					s.value().FieldByIndex(f.index).SetZero()
					taken[s.id] = append(taken[s.id], f.name)
				}
			}
			derive(s.value().Addr().Interface())
		}
	}
	return taken
}
