package rules

import (
	"fmt"
	"math/rand/v2"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
)

// standing keeps of judged verdicts what JudgeBriefly returns.
func standing(all verdict.Record) verdict.Record {
	kept := []verdict.Verdict{}
	for _, v := range all.Verdicts {
		if v.Outcome != verdict.Met && v.Outcome != verdict.NotApplicable {
			kept = append(kept, v)
		}
	}
	all.Verdicts = kept
	return all
}

// TestBriefVerdictsAreThoseThatStand judges every record both ways, one after the
// other and all at once by one engine, so that nothing of one record reaches
// another.
func TestBriefVerdictsAreThoseThatStand(t *testing.T) {
	engine, plain := engines(t)
	type one struct {
		record *record.Record
		doc    *facts.Document
		want   verdict.Record
	}
	var all []one
	some := 0
	for name, text := range everyRecord(t, engine) {
		r, doc := solved(t, name, text)
		whole, err := engine.Judge(r, doc, testDay)
		require.NoError(t, err)
		all = append(all, one{r, doc, standing(whole)})
		some += len(standing(whole).Verdicts)
		if len(all)%50 == 0 {
			got, err := plain.JudgeBriefly(r, doc, testDay)
			require.NoError(t, err)
			require.Equal(t, standing(whole), got, "%s by OPA alone", name)
		}
	}
	assert.NotZero(t, some)
	var work sync.WaitGroup
	for from := range 2 {
		work.Go(func() {
			for i := range all {
				one := &all[(i*7+from)%len(all)]
				got, err := engine.JudgeBriefly(one.record, one.doc, testDay)
				assert.NoError(t, err)
				if !assert.Equal(t, one.want, got, one.record.Name) {
					return
				}
			}
		})
	}
	work.Wait()
}

// TestMoreSubjectsThanABatch compares with OPA what is found of more subjects than
// are judged at once, of whole batches, and of one more.
func TestMoreSubjectsThanABatch(t *testing.T) {
	engine := soundEngine(t)
	random := rand.New(rand.NewPCG(3, 9))
	for i, n := range []int{batch - 1, batch, batch + 1, 2 * batch, 3*batch + 5} {
		parts := ""
		for k, name := range []string{"breach", "applies", "excludes", "asks"} {
			for j, body := range bodies[(9*i)%len(bodies):][:3] {
				parts += part(heads[name][(i+j+k)%len(heads[name])], body)
			}
		}
		r := formRule(t, engine.kinds, parts)
		agree(t, engine, r, translate(r, engine.kinds), oddDevices(random, n))
	}

	fast, plain := engines(t)
	r, doc := solved(t, "record.yaml", demos(t)["faulty/thruster-launch.yaml"])
	for id, one := range oddDevices(random, 3*batch+1).Devices {
		one.Path = "components." + id
		doc.Devices[id] = one
	}
	judgedAlike(t, fast, plain, r, doc)
}

// TestTheSieveHoldsBackLittle counts what is looked at one by one and then found met
// or not applicable: it costs many times what passes.
func TestTheSieveHoldsBackLittle(t *testing.T) {
	engine := readEngine(t)
	for name, text := range demos(t) {
		r, doc := solved(t, name, text)
		d := engine.list(doc.On(testDay))
		s, at := sieve{}, engine.newSite(d)
		s.site = at
		total, vain := 0, map[string]int{}
		for _, r := range engine.rules {
			s.turn(r.of, d.subjects[r.of.number][:min(batch, len(d.subjects[r.of.number]))])
			var out sifted
			s.sift(&r.translated().program, r.all(), &out)
			total += s.all.count()
			for i := range out.closer.each() {
				at.own = &s.subjects[i]
				var says opinion
				if !r.translated().opine(r, at, r.all(), &says) {
					continue
				}
				if j := r.judge(at, r.all(), &says); j.outcome == verdict.Met || j.outcome == verdict.NotApplicable {
					vain[r.meta.ID]++
				}
			}
		}
		held := 0
		for _, n := range vain {
			held += n
		}
		assert.LessOrEqual(t, held*50, total, fmt.Sprintf("%s: %v of %d in vain", r.Name, vain, total))
	}
}

// TestRulesThatAreReadMeanwhile has a sieve that judged the kind with the most
// questions ask those of a rule that another record calls for only then.
func TestRulesThatAreReadMeanwhile(t *testing.T) {
	engine, err := New()
	require.NoError(t, err)
	r, doc := solved(t, "all.yaml", demos(t)["faulty/thruster-launch.yaml"])
	d := engine.list(doc.On(testDay))
	s := sieve{site: engine.newSite(d)}
	late := 0
	sift := func(r *rule) {
		require.Empty(t, r.read())
		s.turn(r.of, d.subjects[r.of.number][:min(batch, len(d.subjects[r.of.number]))])
		before := len(s.questions)
		var out sifted
		s.sift(&r.translated().program, r.all(), &out)
		if len(s.questions) > before && len(s.known) > len(s.questions) {
			late++
		}
	}
	for _, r := range engine.kinds["conductors"].rules {
		sift(r)
	}
	for _, r := range engine.rules {
		if len(d.subjects[r.of.number]) > 0 {
			sift(r)
		}
	}
	assert.NotZero(t, late, r.Name)
}
