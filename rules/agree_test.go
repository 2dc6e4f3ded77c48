package rules

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/facts"
	"driploop/model/verdict"
)

// agree compares what is read of a rule in Go with what OPA finds, for every
// subject of a document.
func agree(t *testing.T, engine *Engine, r *rule, read *translated, doc *facts.Document) {
	t.Helper()
	d := engine.list(doc)
	found, err := r.consult(engine.input(d))
	require.NoError(t, err)
	at := engine.newSite(d)
	for i := range d.subjects[r.of.number] {
		at.own = &d.subjects[r.of.number][i]
		for inForce := mask(1); inForce <= r.all(); inForce++ {
			agreeOn(t, r, read, at, inForce, &found)
		}
	}
	for part := range slices.Chunk(d.subjects[r.of.number], batch) {
		s := sieve{site: at}
		s.turn(r.of, part)
		for inForce := mask(1); inForce <= r.all(); inForce++ {
			sieveAgrees(t, r, read, &s, inForce, &found)
		}
	}
}

// sieveAgrees sees that what passes the sieve is what OPA's answers come to.
func sieveAgrees(t *testing.T, r *rule, read *translated, s *sieve, inForce mask, of *found) {
	t.Helper()
	var out sifted
	s.sift(&read.program, inForce, &out)
	for i := range (s.all &^ out.closer).each() {
		got := judged{outcome: verdict.NotApplicable, sets: inForce}
		if out.applies&(1<<i) != 0 {
			got = judged{outcome: verdict.Met, sets: out.bySet.sets(i, inForce)}
		}
		s.site.own = &s.subjects[i]
		says := of.opinion(r, s.subjects[i].id)
		if !assert.Equal(t, r.judge(s.site, inForce, &says), got) {
			t.Fatalf("%s on %s with %b in force: %+v", r.meta.ID, s.subjects[i].id, inForce, s.subjects[i].value().Interface())
		}
	}
}

// agreeOn compares for one subject and some practice sets in force. Where it is
// read in Go what is found, OPA has to find the same, in the same order.
func agreeOn(t *testing.T, r *rule, read *translated, at *site, inForce mask, of *found) {
	t.Helper()
	var ours opinion
	if !read.opine(r, at, inForce, &ours) {
		return
	}
	opa := of.opinion(r, at.own.id)
	admitted := inForce &^ opa.excludes
	same := assert.Equal(t, opa.excludes&inForce, ours.excludes&inForce, "excludes") &&
		assert.Equal(t, opa.applies&admitted, ours.applies&admitted, "applies") &&
		assert.Equal(t, asksFor(opa.asks, admitted), asksFor(ours.asks, admitted), "asks") &&
		assert.Equal(t, r.judge(at, inForce, &opa), r.judge(at, inForce, &ours))
	found := []finding{}
	for _, f := range opa.findings {
		if f.sets&opa.applies&admitted != 0 {
			found = append(found, f)
		}
	}
	same = same && assert.Equal(t, found, append([]finding{}, ours.findings...), "findings")
	if !same {
		t.Fatalf("%s on %s with %b in force: %+v", r.meta.ID, at.own.id, inForce, at.own.value().Interface())
	}
}

// asksFor writes what is asked for on behalf of some sets.
func asksFor(all []ask, of mask) []string {
	var texts []string
	for _, a := range all {
		if text := fmt.Sprintf("%s for %b", a.need.name, a.sets); a.sets&of != 0 && !slices.Contains(texts, text) {
			texts = append(texts, text)
		}
	}
	return texts
}
