package yard

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/verdict"
)

// fill gives every field of a value something, so that a field that is not kept
// is found.
func fill(v reflect.Value, n *int) {
	*n++
	switch v.Kind() {
	case reflect.String:
		v.SetString(fmt.Sprintf("text %d", *n))
	case reflect.Int, reflect.Int64:
		v.SetInt(int64(*n))
	case reflect.Uint8:
		v.SetUint(uint64(*n % 4)) //nolint:gosec // small
	case reflect.Float64:
		v.SetFloat(float64(*n) + 0.25)
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		fill(v.Elem(), n)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		for i := range v.Len() {
			fill(v.Index(i), n)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			fill(v.Field(i), n)
		}
	}
}

func keptRecord() (Kept, *verdict.Rule) {
	rule := &verdict.Rule{ID: "a/b"}
	var rec verdict.Record
	n := 0
	fill(reflect.ValueOf(&rec).Elem(), &n)
	for i := range rec.Verdicts {
		v := &rec.Verdicts[i]
		v.Rule, v.Outcome, v.Recast, v.Change, v.Severity = rule, verdict.Breach, nil, "", verdict.Danger
		v.Sources[1].Needs = nil
	}
	rec.Counts = verdict.Count(rec.Verdicts)
	// These are not of the text alone, and are added after.
	rec.Path, rec.SHA256, rec.Since, rec.Cured, rec.Known, rec.KnownOpen, rec.ByRule = "", "", "", nil, nil, 0, nil
	return Kept{rec, map[string]verdict.Range{"job": {Start: verdict.Position{Line: 2, Column: 1}}}}, rule
}

func TestWhatIsKeptIsWhole(t *testing.T) {
	k, rule := keptRecord()
	find := func(id string) *verdict.Rule {
		if id == rule.ID {
			return rule
		}
		return nil
	}
	packed := Pack(&k)
	got, ok := Unpack(packed, find)
	require.True(t, ok)
	assert.Equal(t, k, got)
	_, ok = Unpack(packed, func(string) *verdict.Rule { return nil })
	assert.False(t, ok, "of a rule that is there no longer")
	for i := range packed {
		_, ok := Unpack(packed[:i], find)
		assert.False(t, ok, "cut after %d bytes", i)
	}
}

func TestDamagedEntriesAreNotBelieved(t *testing.T) {
	c, err := OpenCache(filepath.Join(t.TempDir(), "kept"))
	require.NoError(t, err)
	k, other := KeyOf("a", "b"), KeyOf("ab", "")
	require.NotEqual(t, k, other)
	_, ok := c.Get(k)
	assert.False(t, ok)
	body := bytes.Repeat([]byte("verdicts "), 100)
	require.NoError(t, c.Put(k, body))
	got, ok := c.Get(k)
	require.True(t, ok)
	assert.Equal(t, body, got)

	whole, err := os.ReadFile(c.path(k))
	require.NoError(t, err)
	damage := map[string][]byte{
		"empty": {}, "cut short": whole[:len(whole)-1], "longer": append(bytes.Clone(whole), 0),
		"another format": append([]byte("driploop.cache/0\n"), whole[len(cacheFormat):]...), "foreign": []byte("not ours at all"),
	}
	for i := 0; i < len(whole); i += 7 {
		changed := bytes.Clone(whole)
		changed[i] ^= 1
		damage[fmt.Sprintf("byte %d", i)] = changed
	}
	for name, text := range damage {
		require.NoError(t, os.WriteFile(c.path(k), text, 0o600))
		_, ok := c.Get(k)
		assert.False(t, ok, name)
	}
	// The entry of one key under the name of another.
	require.NoError(t, os.MkdirAll(filepath.Dir(c.path(other)), 0o700))
	require.NoError(t, os.WriteFile(c.path(other), whole, 0o600))
	_, ok = c.Get(other)
	assert.False(t, ok)
	// No file at all.
	require.NoError(t, os.Remove(c.path(k)))
	require.NoError(t, os.Mkdir(c.path(k), 0o700))
	_, ok = c.Get(k)
	assert.False(t, ok)
}

func TestManyMayShareACache(t *testing.T) {
	c, err := OpenCache(filepath.Join(t.TempDir(), "kept"))
	require.NoError(t, err)
	var all sync.WaitGroup
	for worker := range 4 {
		all.Go(func() {
			for i := range 50 {
				k, body := KeyOf(fmt.Sprint(i)), bytes.Repeat([]byte{byte(i)}, 5000)
				if worker%2 == 0 {
					assert.NoError(t, c.Put(k, body))
				}
				if got, ok := c.Get(k); ok {
					assert.Equal(t, body, got)
				}
			}
		})
	}
	all.Wait()
	left, err := filepath.Glob(filepath.Join(c.dir, "*", ".new-*"))
	require.NoError(t, err)
	assert.Empty(t, left)
}

func FuzzUnpack(f *testing.F) {
	k, rule := keptRecord()
	f.Add(Pack(&k))
	f.Add([]byte{1, 1, 'a'})
	f.Fuzz(func(_ *testing.T, body []byte) {
		_, _ = Unpack(body, func(string) *verdict.Rule { return rule }) // it neither panics nor takes memory without end
	})
}

func FuzzSettings(f *testing.F) {
	f.Add([]byte("gate: danger\nexclude: [\"**/x\"]\nseverity: {a/b: {to: notice, reason: x}}\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		s, faults := Read("driploop.yaml", text)
		if len(faults) == 0 {
			assert.NotEmpty(t, s.Explain())
		}
	})
}

func FuzzBaseline(f *testing.F) {
	f.Add([]byte(`{"format": "driploop.baseline/1", "about": "", "known": []}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		if b, err := ReadBaseline("x", text); err == nil {
			assert.Zero(t, b.Cured(), "nothing was judged")
		}
	})
}
