package facts_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
)

// documents builds the facts of every demo record.
func documents(t *testing.T) map[string]*facts.Document {
	t.Helper()
	all := map[string]*facts.Document{}
	for path, source := range demoRecords(t) {
		r, faults := record.Decode(path, source)
		require.Empty(t, faults, path)
		all[path] = facts.Build(r, circuit.Analyse(r))
	}
	return all
}

// demoRecords returns the texts of the demo records by path.
func demoRecords(t *testing.T) map[string][]byte {
	t.Helper()
	all := map[string][]byte{}
	err := filepath.WalkDir("../../testdata/records", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, ".yaml") {
			return err
		}
		all[path], err = os.ReadFile(path)
		return err
	})
	require.NoError(t, err)
	require.NotEmpty(t, all)
	return all
}

// eachSubject calls f with every subject of a document.
func eachSubject(d *facts.Document, f func(name string, subject reflect.Value)) {
	document := reflect.ValueOf(d).Elem()
	for i := range document.NumField() {
		field, name := document.Field(i), document.Type().Field(i).Name
		switch field.Kind() {
		case reflect.Pointer:
			f(name, field.Elem())
		case reflect.Map:
			for _, key := range field.MapKeys() {
				f(name+" "+key.String(), field.MapIndex(key).Elem())
			}
		}
	}
}

// eachFact calls f with every fact of a subject, embedded ones included.
func eachFact(subject reflect.Value, f func(name string, value reflect.Value)) {
	for i := range subject.NumField() {
		field := subject.Type().Field(i)
		if field.Anonymous {
			if field.Name != "Subject" {
				eachFact(subject.Field(i), f)
			}
			continue
		}
		name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
		f(name, subject.Field(i))
	}
}

func TestEveryFactIsKnownOrSaysWhatIsMissing(t *testing.T) {
	for path, d := range documents(t) {
		eachSubject(d, func(name string, subject reflect.Value) { knownOrOpen(t, path+": "+name, subject) })
	}
}

// knownOrOpen holds a subject to it that each of its facts is known or open, never
// both and never neither, and that what is open names what is missing.
func knownOrOpen(t testing.TB, name string, subject reflect.Value) {
	t.Helper()
	open := subject.Addr().Interface().(interface{ Base() *facts.Subject }).Base().Open
	known := map[string]bool{}
	eachFact(subject, func(fact string, value reflect.Value) {
		known[fact] = true
		if value.Kind() == reflect.Pointer && value.IsNil() != open.Has(fact) {
			t.Errorf("%s: %s: known and open, or neither", name, fact)
		}
	})
	for _, fact := range open.Names() {
		if !known[fact] {
			t.Errorf("%s: open names %s, which is no fact", name, fact)
		}
		if len(open.Of(fact)) == 0 {
			t.Errorf("%s: %s is open without a reason", name, fact)
		}
	}
}

func TestFactsAreTheSameForTheSameRecord(t *testing.T) {
	first, second := documents(t), documents(t)
	assert.Equal(t, first, second)
}
