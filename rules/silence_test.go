package rules_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/rules"
)

// allLeaves, set in the environment, makes the test below take away every value
// and not just a sample of them: minutes instead of seconds.
const allLeaves = "DRIPLOOP_ALL_LEAVES"

// sampled is how many changes of a record the test makes without allLeaves.
const sampled = 25

// TestNoLeafTakenAwayPassesInSilence takes single values out of the demo
// records, and once more writes "unknown" for them, and sees that no breach and
// no undecided verdict turns into met or not-applicable by it. A record that
// then cannot be used is no pass. Left alone are the practice sets, which decide
// by what the record is judged, and the digest that was signed, without which
// there is nothing to compare.
func TestNoLeafTakenAwayPassesInSilence(t *testing.T) {
	engine, err := rules.New()
	require.NoError(t, err)
	paths, err := filepath.Glob("../testdata/records/*/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		t.Run(strings.TrimPrefix(path, "../testdata/records/"), func(t *testing.T) {
			source, err := os.ReadFile(path)
			require.NoError(t, err)
			before, usable := outcomes(t, engine, source)
			require.True(t, usable, "the record itself is faulty")
			changes := withoutEachLeaf(t, source)
			require.NotEmpty(t, changes)
			if os.Getenv(allLeaves) == "" {
				changes = sample(changes, sampled)
			}
			var judged atomic.Int64
			eachInParallel(changes, func(c change) {
				after, usable := outcomes(t, engine, c.source)
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
			assert.Greater(t, int(judged.Load()), len(changes)/4, "enough of the changed records can be judged")
		})
	}
}

// change is a record with one value taken away.
type change struct {
	name   string
	source []byte
}

// sample returns at most n changes, evenly spread over all.
func sample(changes []change, n int) []change {
	if len(changes) <= n {
		return changes
	}
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
		wg.Add(1)
		go func() {
			defer wg.Done()
			for c := range next {
				f(c)
			}
		}()
	}
	for _, c := range changes {
		next <- c
	}
	close(next)
	wg.Wait()
}

// outcomes judges a record and returns the outcome by rule and subject; false if
// the record cannot be used.
func outcomes(t *testing.T, engine *rules.Engine, source []byte) (map[string]verdict.Outcome, bool) {
	t.Helper()
	r, faults := record.Decode("record.yaml", source)
	if len(faults) > 0 {
		return nil, false
	}
	result, err := engine.Judge(r, facts.Build(r, circuit.Analyse(r)), time.Date(2026, 7, 1, 0, 0, 0, 0, time.UTC))
	require.NoError(t, err)
	all := map[string]verdict.Outcome{}
	for _, v := range result.Verdicts {
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

// withoutEachLeaf returns the record once without each of its values, and once
// with each written "unknown".
func withoutEachLeaf(t *testing.T, source []byte) []change {
	t.Helper()
	var document yaml.Node
	require.NoError(t, yaml.Unmarshal(source, &document))
	flatten(&document)
	var changes []change
	written := func(name string) {
		out, err := yaml.Marshal(&document)
		require.NoError(t, err)
		changes = append(changes, change{name, out})
	}
	var walk func(node *yaml.Node, path string)
	walk = func(node *yaml.Node, path string) {
		switch node.Kind {
		case yaml.DocumentNode:
			walk(node.Content[0], path)
		case yaml.MappingNode:
			for i := 0; i+1 < len(node.Content); i += 2 {
				key, value := node.Content[i], node.Content[i+1]
				at := strings.TrimPrefix(path+"."+key.Value, ".")
				if at == "practice" || at == "sign_off.digest" {
					continue
				}
				if value.Kind != yaml.ScalarNode {
					walk(value, at)
					continue
				}
				whole := node.Content
				node.Content = append(append([]*yaml.Node{}, whole[:i]...), whole[i+2:]...)
				written("without " + at)
				node.Content = whole
				unknown(value, func() { written("unknown " + at) })
			}
		case yaml.SequenceNode:
			for i, item := range node.Content {
				at := fmt.Sprintf("%s[%d]", path, i)
				if item.Kind != yaml.ScalarNode {
					walk(item, at)
					continue
				}
				whole := node.Content
				node.Content = append(append([]*yaml.Node{}, whole[:i]...), whole[i+1:]...)
				written("without " + at)
				node.Content = whole
			}
		}
	}
	walk(&document, "")
	return changes
}

// unknown calls f while the value reads "unknown".
func unknown(value *yaml.Node, f func()) {
	was := *value
	value.SetString("unknown")
	f()
	*value = was
}

// flatten writes out aliases and merge keys, so that a value taken away does not
// lay bare the one that it stood for.
func flatten(node *yaml.Node) {
	for node.Kind == yaml.AliasNode {
		*node = *node.Alias
	}
	node.Anchor = ""
	children := make([]*yaml.Node, len(node.Content))
	for i, child := range node.Content {
		own := *child
		flatten(&own)
		children[i] = &own
	}
	node.Content = children
	if node.Kind != yaml.MappingNode {
		return
	}
	var plain, merged []*yaml.Node
	has := map[string]bool{}
	for i := 0; i+1 < len(children); i += 2 {
		if children[i].Tag == "!!merge" {
			merged = append(merged, children[i+1])
			continue
		}
		has[children[i].Value] = true
		plain = append(plain, children[i], children[i+1])
	}
	for _, from := range merged {
		for i := 0; i+1 < len(from.Content); i += 2 {
			if !has[from.Content[i].Value] {
				has[from.Content[i].Value] = true
				plain = append(plain, from.Content[i], from.Content[i+1])
			}
		}
	}
	node.Content = plain
}
