package yard

import (
	"bytes"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"sync"
	"testing"
	"time"

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

// opened opens a cache, and closes it at the end of the test.
func opened(t *testing.T, dir string, limit int64) *Cache {
	t.Helper()
	c, err := OpenCache(dir, limit)
	require.NoError(t, err)
	t.Cleanup(func() { _ = c.Close() })
	return c
}

// filled keeps some entries in a folder and returns the path of their segment.
func filled(t *testing.T, dir string, entries map[Key][]byte) string {
	t.Helper()
	c := opened(t, dir, CacheLimit)
	for _, k := range slices.SortedFunc(maps.Keys(entries), func(a, b Key) int { return bytes.Compare(a[:], b[:]) }) {
		c.Put(k, "", entries[k])
	}
	require.NoError(t, c.Close())
	all := segmentsIn(t, dir)
	require.Len(t, all, 1)
	return all[0]
}

func segmentsIn(t *testing.T, dir string) []string {
	t.Helper()
	all, err := filepath.Glob(filepath.Join(dir, "*"+segmentEnding))
	require.NoError(t, err)
	return all
}

func someEntries(n int) map[Key][]byte {
	all := map[Key][]byte{}
	for i := range n {
		all[KeyOf(fmt.Sprint(i))] = bytes.Repeat(fmt.Appendf(nil, "verdicts of %d ", i*i*7919), 1+i%40)
	}
	return all
}

func TestDamagedEntriesAreNotBelieved(t *testing.T) {
	require.NotEqual(t, KeyOf("a", "b"), KeyOf("ab", ""))
	dir := t.TempDir()
	entries := someEntries(20)
	path := filled(t, dir, entries)
	whole, err := os.ReadFile(path)
	require.NoError(t, err)
	found := func() (n int) {
		c := opened(t, dir, CacheLimit)
		defer c.Close()
		for k, want := range entries {
			if got, ok := c.Get(k, ""); ok {
				n++
				assert.Equal(t, want, got)
			}
		}
		return n
	}
	require.Equal(t, len(entries), found())
	// Each byte in turn, and each length: what is found is right, whatever is lost.
	lost := false
	for i := range whole {
		changed := bytes.Clone(whole)
		changed[i] ^= 1 << (i % 8)
		require.NoError(t, os.WriteFile(path, changed, 0o600))
		lost = found() < len(entries) || lost
	}
	assert.True(t, lost, "damage is seen")
	for i := 0; i < len(whole); i += 3 {
		require.NoError(t, os.WriteFile(path, whole[:i], 0o600))
		n := found()
		assert.Less(t, n, len(entries)+1)
		if i > len(whole)*9/10 {
			assert.Greater(t, n, len(entries)/2, "what stands before the cut is kept")
		}
	}
	for name, text := range map[string][]byte{
		"empty": {}, "another format": append([]byte("driploop.cache/1\n"), whole[len(segmentFormat):]...), "foreign": []byte("not ours at all"),
		"no more than a format": []byte(segmentFormat),
	} {
		require.NoError(t, os.WriteFile(path, text, 0o600))
		assert.Zero(t, found(), name)
	}
	require.NoError(t, os.Remove(path))
	require.NoError(t, os.Mkdir(path, 0o700))
	assert.Zero(t, found(), "no file")
}

func TestAnEntryOfTheDayHoldsForTheDay(t *testing.T) {
	dir := t.TempDir()
	c := opened(t, dir, CacheLimit)
	c.Put(KeyOf("waived"), "2026-06-18", []byte("waived"))
	c.Put(KeyOf("whole"), "", []byte("whole"))
	require.NoError(t, c.Close())
	c = opened(t, dir, CacheLimit)
	for day, want := range map[string]bool{"2026-06-18": true, "2026-06-19": false} {
		_, ok := c.Get(KeyOf("waived"), day)
		assert.Equal(t, want, ok, day)
		_, ok = c.Get(KeyOf("whole"), day)
		assert.True(t, ok, day)
	}
}

func TestTheCacheStaysWithinItsLimit(t *testing.T) {
	dir := t.TempDir()
	noise := rand.NewChaCha8([32]byte{1}) // that cannot be compressed
	size := func() (total int64) {
		for _, path := range segmentsIn(t, dir) {
			info, err := os.Stat(path)
			require.NoError(t, err)
			total += info.Size()
		}
		return total
	}
	const limit, each = 1 << 20, 200 << 10
	for i := range 30 {
		c := opened(t, dir, limit)
		_, usedAlways := c.Get(KeyOf("0"), "")
		assert.True(t, usedAlways || i == 0, "what is of use stays, %d", i)
		body := make([]byte, each)
		_, _ = noise.Read(body)
		c.Put(KeyOf(fmt.Sprint(i)), "", body)
		require.NoError(t, c.Close())
		assert.LessOrEqual(t, size(), int64(limit))
		past := time.Now().Add(-2 * stale)
		for _, path := range segmentsIn(t, dir) {
			info, err := os.Stat(path)
			require.NoError(t, err)
			require.NoError(t, os.Chtimes(path, past, info.ModTime().Add(-2*stale)))
		}
	}
	assert.Greater(t, size(), int64(limit/2), "and is made use of")
}

func TestManySmallSegmentsBecomeOne(t *testing.T) {
	dir := t.TempDir()
	for i := range 5 * manySegments {
		c := opened(t, dir, CacheLimit)
		c.Put(KeyOf(fmt.Sprint(i)), "", fmt.Appendf(nil, "body %d", i))
		require.NoError(t, c.Close())
		assert.LessOrEqual(t, len(segmentsIn(t, dir)), manySegments+1)
	}
	c := opened(t, dir, CacheLimit)
	for i := range 5 * manySegments {
		body, ok := c.Get(KeyOf(fmt.Sprint(i)), "")
		assert.True(t, ok, i)
		assert.Equal(t, fmt.Sprintf("body %d", i), string(body))
	}
}

func TestManyMayShareACache(t *testing.T) {
	dir := t.TempDir()
	entries := someEntries(100)
	var all sync.WaitGroup
	for worker := range 4 {
		all.Go(func() {
			for range 10 {
				c, err := OpenCache(dir, CacheLimit)
				if !assert.NoError(t, err) {
					return
				}
				for k, want := range entries {
					if got, ok := c.Get(k, ""); ok {
						assert.Equal(t, want, got)
					} else if int(k[0])%4 == worker {
						c.Put(k, "", want)
					}
				}
				assert.NoError(t, c.Close())
			}
		})
	}
	all.Wait()
	c := opened(t, dir, CacheLimit)
	for k, want := range entries {
		got, ok := c.Get(k, "")
		assert.True(t, ok)
		assert.Equal(t, want, got)
	}
}

func TestAFolderThatCannotBeWrittenCostsNothingElse(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "kept")
	c := opened(t, dir, CacheLimit)
	require.NoError(t, os.RemoveAll(dir))
	c.Put(KeyOf("a"), "", []byte("a"))
	assert.Error(t, c.Close())
	_, err := OpenCache(os.DevNull, CacheLimit)
	assert.Error(t, err)
}

// FuzzSegment reads any bytes as a segment.
func FuzzSegment(f *testing.F) {
	dir := f.TempDir()
	c, err := OpenCache(dir, CacheLimit)
	require.NoError(f, err)
	c.Put(KeyOf("a"), "", []byte("body"))
	require.NoError(f, c.Close())
	paths, err := filepath.Glob(filepath.Join(dir, "*"+segmentEnding))
	require.NoError(f, err)
	whole, err := os.ReadFile(paths[0])
	require.NoError(f, err)
	f.Add(whole)
	f.Add(whole[:len(whole)-1])
	f.Fuzz(func(t *testing.T, text []byte) {
		dir := t.TempDir()
		require.NoError(t, os.WriteFile(filepath.Join(dir, "driploop-1"+segmentEnding), text, 0o600))
		c, err := OpenCache(dir, CacheLimit)
		require.NoError(t, err)
		if got, ok := c.Get(KeyOf("a"), ""); ok {
			assert.Equal(t, "body", string(got))
		}
		assert.NoError(t, c.Close())
	})
}
