package rules_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"hash/fnv"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
	"driploop/rules"
)

// named are the sections of a record whose keys are ids.
var named = []string{"spaces", "components", "conductors", "bundles", "penetrations"}

// plain returns the entries of a record with aliases and merge keys written out.
func plain(t *testing.T, source []byte) map[string]any {
	t.Helper()
	var entries map[string]any
	require.NoError(t, yaml.Unmarshal(source, &entries))
	return dated(entries).(map[string]any)
}

// dated writes dates as a record has them.
func dated(value any) any {
	switch v := value.(type) {
	case time.Time:
		return v.Format(time.DateOnly)
	case map[string]any:
		for key := range v {
			v[key] = dated(v[key])
		}
	case []any:
		for i := range v {
			v[i] = dated(v[i])
		}
	}
	return value
}

// inOrder writes a record as JSON, which is YAML, with the entries of every
// mapping in the order of their keys' places.
func inOrder(t *testing.T, value any, place func(key string) string) []byte {
	t.Helper()
	var b bytes.Buffer
	var write func(value any)
	write = func(value any) {
		switch v := value.(type) {
		case map[string]any:
			b.WriteByte('{')
			for i, key := range sortedBy(v, place) {
				if i > 0 {
					b.WriteString(", ")
				}
				fmt.Fprintf(&b, "%q: ", key)
				write(v[key])
			}
			b.WriteByte('}')
		case []any:
			b.WriteByte('[')
			for i, item := range v {
				if i > 0 {
					b.WriteString(", ")
				}
				write(item)
			}
			b.WriteByte(']')
		default:
			text, err := json.Marshal(v)
			require.NoError(t, err)
			b.Write(text)
		}
	}
	write(value)
	return b.Bytes()
}

func sortedBy(m map[string]any, place func(string) string) []string {
	keys := make([]string, 0, len(m))
	for key := range m {
		keys = append(keys, key)
	}
	// insertion by place, then by key: places may fall together
	for i := 1; i < len(keys); i++ {
		for j := i; j > 0 && place(keys[j])+keys[j] < place(keys[j-1])+keys[j-1]; j-- {
			keys[j], keys[j-1] = keys[j-1], keys[j]
		}
	}
	return keys
}

// shuffled is a place that depends on nothing but the key and a seed.
func shuffled(seed string) func(string) string {
	return func(key string) string {
		h := fnv.New64a()
		h.Write([]byte(seed + key))
		return fmt.Sprintf("%016x", h.Sum64())
	}
}

// renaming gives every id of a record another one, and knows the way back.
type renaming struct{ to, from map[string]string }

func renamed(t *testing.T, entries map[string]any, seed string) (map[string]any, renaming) {
	t.Helper()
	names := renaming{map[string]string{}, map[string]string{}}
	place := shuffled(seed)
	for _, section := range named {
		ids, _ := entries[section].(map[string]any)
		for id := range ids {
			names.to[id] = "q" + place(id)[:8]
			names.from[names.to[id]] = id
		}
	}
	out, ok := names.apply("", entries).(map[string]any)
	require.True(t, ok)
	return out, names
}

// referring are the entries whose words are ids, or terminals of components.
var referring = map[string]bool{
	"space": true, "from": true, "to": true, "bundle": true, "members": true, "passes": true, "load": true, "conductor": true,
	"penetration": true, "at": true, "loads": true, "closed": true, "open": true,
}

func (n renaming) apply(key string, value any) any {
	switch v := value.(type) {
	case map[string]any:
		out := map[string]any{}
		for k, item := range v {
			if name, ok := n.to[k]; ok && (key == "spaces" || key == "components" || key == "conductors" || key == "bundles" || key == "penetrations") {
				out[name] = n.apply("", item)
				continue
			}
			out[k] = n.apply(k, item)
		}
		return out
	case []any:
		out := make([]any, len(v))
		for i := range v {
			out[i] = n.apply(key, v[i])
		}
		return out
	case string:
		if !referring[key] {
			return v
		}
		parts := strings.Split(v, ".")
		for i, part := range parts {
			if name, ok := n.to[part]; ok && (i == 0 || key == "at" && i == 1) {
				parts[i] = name
			}
		}
		return strings.Join(parts, ".")
	}
	return value
}

var anyID = regexp.MustCompile(`q[0-9a-f]{8}`)

// back names the subjects of a judgement as before.
func (n renaming) back(said map[string]string) map[string]string {
	was := map[string]string{}
	for key, outcome := range said {
		was[anyID.ReplaceAllStringFunc(key, func(id string) string {
			if old, ok := n.from[id]; ok {
				return old
			}
			return id
		})] = outcome
	}
	return was
}

// A record says the same in whatever order its entries stand, however it shares
// them by anchors, whatever its ids are, and when it is asked again.
func TestRecordsAreJudgedAlikeInAnyOrderAndByAnyNames(t *testing.T) {
	engine, err := rules.New()
	require.NoError(t, err)
	for _, path := range corpusFiles(t) {
		t.Run(filepath.Base(path), func(t *testing.T) {
			source, err := os.ReadFile(path)
			require.NoError(t, err)
			judge := func(text []byte) map[string]string {
				r, faults := record.Decode(path, text)
				require.Empty(t, faults, "%s", text)
				return saying(t, engine, r, facts.Build(r, circuit.Analyse(r)))
			}
			before := judge(source)
			assert.Equal(t, before, judge(source), "asked twice")
			entries := plain(t, source)
			for _, seed := range []string{"a", "b"} {
				assert.Equal(t, before, judge(inOrder(t, entries, shuffled(seed))), "in another order, without anchors")
				other, names := renamed(t, entries, seed)
				assert.Equal(t, before, names.back(judge(inOrder(t, other, shuffled(seed)))), "by other names")
			}
		})
	}
}
