package rules

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/facts"
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
		at.move(&d.subjects[r.of.number][i], r.of)
		for inForce := mask(1); inForce <= r.all(); inForce++ {
			agreeOn(t, r, read, at, inForce, &found)
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
		t.Fatalf("%s on %s with %b in force: %+v", r.meta.ID, at.own.id, inForce, at.own.value.Interface())
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
