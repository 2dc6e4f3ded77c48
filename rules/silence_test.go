package rules

import (
	"fmt"
	"os"
	"regexp"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
)

// everyUse, set in the environment, has the test below make every change: of the
// corpus too, and at every place where an alias or merge key brings a value, not
// only where it first stands. That takes many minutes instead of one.
const everyUse = "DRIPLOOP_EVERY_USE"

// sampledUses is how many further uses of a demo record's values the test takes
// away without everyUse, and sampledOthers how many changes it makes to a record
// that is no demo.
const (
	sampledUses   = 100
	sampledOthers = 25
)

// TestNoLeafTakenAwayPassesInSilence takes each single value out of the demo
// records, and a sample out of those of the corpus, and once more writes "unknown" for it, and sees that no breach and no
// undecided verdict turns into met or not-applicable by it. A record that then
// cannot be used is no pass. Left alone are the practice sets, which decide by
// what the record is judged, and the digest that was signed, without which there
// is nothing to compare.
func TestNoLeafTakenAwayPassesInSilence(t *testing.T) {
	engine, err := New()
	require.NoError(t, err)
	for name, text := range demos(t) {
		t.Run(name, func(t *testing.T) {
			before, usable := outcomesOfRecord(t, engine, text)
			require.True(t, usable, "the record itself is faulty")
			changes := withoutEachLeaf(t, text)
			require.NotEmpty(t, changes)
			if os.Getenv(everyUse) == "" {
				changes = firstUses(changes)
				if demo := regexp.MustCompile(`^(clean|faulty|sparse)/`); !demo.MatchString(name) {
					changes = spread(changes, sampledOthers)
				}
			}
			var judged atomic.Int64
			eachInParallel(changes, func(c change) {
				after, usable := outcomesOfRecord(t, engine, c.text)
				if !usable {
					return
				}
				judged.Add(1)
				for subject, was := range before {
					now, is := after[subject]
					if was != verdict.Breach && was != verdict.Undecided {
						continue
					}
					assert.False(t, !is || now == verdict.Met || now == verdict.NotApplicable,
						"%s: %s was %s and is %q", c.name, subject, was, now)
				}
			})
			t.Logf("%d of %d changed records can be judged", judged.Load(), len(changes))
			assert.Greater(t, int(judged.Load()), len(changes)/4, "enough of the changed records can be judged")
		})
	}
}

// firstUses returns the changes of each value where it first stands, and a
// sample, evenly spread, of those at its further uses.
func firstUses(changes []change) []change {
	var first, further []change
	for _, c := range changes {
		if c.again {
			further = append(further, c)
		} else {
			first = append(first, c)
		}
	}
	return append(first, spread(further, sampledUses)...)
}

// spread returns at most n changes, evenly spread over all.
func spread(changes []change, n int) []change {
	n = min(len(changes), n)
	picked := make([]change, n)
	for i := range picked {
		picked[i] = changes[i*len(changes)/n]
	}
	return picked
}

// eachInParallel calls f with every change, two at a time.
func eachInParallel(changes []change, f func(change)) {
	var wg sync.WaitGroup
	next := make(chan change)
	for range 2 {
		wg.Go(func() {
			for c := range next {
				f(c)
			}
		})
	}
	for _, c := range changes {
		next <- c
	}
	close(next)
	wg.Wait()
}

// outcomesOfRecord judges a record and returns the outcome by rule and subject;
// false if the record cannot be used.
func outcomesOfRecord(t *testing.T, engine *Engine, text string) (map[string]verdict.Outcome, bool) {
	t.Helper()
	r, faults := record.Decode("record.yaml", []byte(text))
	if len(faults) > 0 {
		return nil, false
	}
	result, err := engine.Judge(r, facts.Build(r, circuit.Analyse(r)), time.Date(2026, 7, 1, 0, 0, 0, 0, time.UTC))
	require.NoError(t, err)
	all := make(map[string]verdict.Outcome, len(result.Verdicts))
	for i := range result.Verdicts {
		v := &result.Verdicts[i]
		key := v.Rule.ID + " on " + v.Subject
		for n := 2; ; n++ {
			if _, taken := all[key]; !taken {
				break
			}
			key = fmt.Sprintf("%s on %s (%d)", v.Rule.ID, v.Subject, n)
		}
		all[key] = v.Outcome
	}
	return all, true
}
