package record

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// different are texts that have little in common: records of all sizes, and what
// is none.
func different(t *testing.T) [][]byte {
	t.Helper()
	all := [][]byte{
		recordOf(1), recordOf(40), []byte(head), nil, []byte("a: [b"), handedOn(recordOf(3)), []byte(head + "spaces:\n" + mergeBomb(9)),
		[]byte(head + "spaces: {a: {" + strings.Repeat("x: 1, ", 2*maxFaults) + "}}\n"),
		[]byte(head + "bundles:\n" + strings.Repeat("  B: {members: [P1, P1], note: one}\n", 300)),
	}
	for _, pattern := range []string{"clean/*.yaml", "faulty/*.yaml"} {
		files, err := filepath.Glob(filepath.Join("..", "..", "testdata", "records", pattern))
		require.NoError(t, err)
		require.NotEmpty(t, files)
		for _, file := range files {
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			all = append(all, text)
		}
	}
	return all
}

// told is all that decoding says of a text, as a text that shares nothing with it.
func told(r *Record, faults Faults) string {
	var b strings.Builder
	for path, at := range r.Places.All() {
		fmt.Fprintln(&b, path, at)
	}
	for _, v := range values(r) {
		fmt.Fprintln(&b, v)
	}
	fmt.Fprintln(&b, r.SHA256, r.Name, Digest(r), ids(r.Components), ids(r.Conductors), faults.Error())
	return b.String()
}

// A decoder is used for one record after the other: none may have anything of
// another, and none may change when the next is read.
func TestRecordsHaveNothingOfEachOther(t *testing.T) {
	texts := different(t)
	alone := make([]string, len(texts))
	for i, text := range texts {
		d := &decoder{} // never used before
		alone[i] = told(d.decode("r", text))
	}
	var all sync.WaitGroup
	for worker := range 3 {
		all.Go(func() {
			var earlier *Record
			var faults Faults
			for i := range texts {
				at := (i*(worker+1) + 5*worker) % len(texts)
				r, f := Decode("r", texts[at])
				assert.Equal(t, alone[at], told(r, f), "text %d", at)
				if before := ((i-1)*(worker+1) + 5*worker) % len(texts); earlier != nil {
					assert.Equal(t, alone[before], told(earlier, faults), "text %d, when another was read", before)
				}
				earlier, faults = r, f
			}
		})
	}
	all.Wait()
}

func TestADecoderForgets(t *testing.T) {
	d := &decoder{}
	for _, text := range different(t) {
		_, _ = d.decode("r", text)
		d.forget()
		remembered(t, reflect.ValueOf(d).Elem(), "decoder", map[uintptr]bool{})
	}
}

// remembered finds texts, in the room of lists beyond their length, too.
func remembered(t *testing.T, v reflect.Value, path string, met map[uintptr]bool) {
	t.Helper()
	switch v.Kind() {
	case reflect.String:
		assert.Empty(t, v.String(), path)
	case reflect.Pointer:
		if !v.IsNil() && !met[v.Pointer()] {
			met[v.Pointer()] = true
			remembered(t, v.Elem(), path, met)
		}
	case reflect.Map:
		assert.Zero(t, v.Len(), path)
	case reflect.Slice:
		v = v.Slice3(0, v.Cap(), v.Cap())
		for i := range v.Len() {
			remembered(t, v.Index(i), path+"[]", met)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			remembered(t, v.Field(i), path+"."+v.Type().Field(i).Name, met)
		}
	}
}
