package record

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"time"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// Digest returns "sha256:" and the digest of what the record says of the job, in
// hexadecimal. It stays the same when comments, order of entries, anchors,
// spelling of units or the file's name change, and changes with every value. The
// sign-off and the waivers are left out: the first carries the digest, and the
// second have an author and a date of their own.
func Digest(r *Record) string {
	said := statements{}
	for _, part := range []struct {
		path  string
		value any
	}{
		{"job", r.Job},
		{"vessel", r.Vessel},
		{"practice", r.Practice},
		{"spaces", r.Spaces},
		{"components", r.Components},
		{"conductors", r.Conductors},
		{"bundles", r.Bundles},
		{"penetrations", r.Penetrations},
		{"cases", r.Cases},
		{"tests", r.Tests},
	} {
		said.add(part.path, reflect.ValueOf(part.value))
	}
	slices.Sort(said.lines)
	sum := sha256.Sum256([]byte(strings.Join(said.lines, "\n")))
	return "sha256:" + hex.EncodeToString(sum[:])
}

// statements collects one line for each value that a record gives.
type statements struct{ lines []string }

func (s *statements) say(path, what string) { s.lines = append(s.lines, path+"="+strconv.Quote(what)) }

// add adds all that a part of a record says.
func (s *statements) add(path string, v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			s.add(path, v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			s.add(path+"["+strconv.Itoa(i)+"]", v.Index(i))
		}
	case reflect.Struct:
		s.part(path, v)
	case reflect.String:
		if v.Len() > 0 {
			s.say(path, v.String())
		}
	}
}

// part adds a struct: a value, a terminal, or a part with values of its own.
func (s *statements) part(path string, v reflect.Value) {
	if state := v.FieldByName("State"); state.IsValid() && state.Type() == reflect.TypeFor[State]() {
		switch State(state.Uint()) {
		case Given:
			s.say(path, spelt(v.FieldByName("V").Interface()))
		case Unknown:
			s.say(path, "unknown "+spelt(v.FieldByName("V").Interface()))
		}
		return
	}
	if entry := v.FieldByName("Entry"); entry.IsValid() && entry.FieldByName("ID").Len() > 0 {
		path = entry.FieldByName("Path").String()
		s.say(path, "")
	}
	for i := range v.NumField() {
		field := v.Type().Field(i)
		if !field.IsExported() || field.Type == reflect.TypeFor[Entry]() || field.Type == reflect.TypeFor[verdict.Range]() {
			continue
		}
		s.add(path+"."+field.Name, v.Field(i))
	}
}

// spelt spells a value so that equal values are spelt alike.
func spelt(v any) string {
	switch v := v.(type) {
	case quantity.Quantity:
		return inBase(v)
	case [2]quantity.Quantity:
		return inBase(v[0]) + " to " + inBase(v[1])
	case quantity.WireSize:
		return v.String()
	case time.Time:
		return v.Format(time.DateOnly)
	case []string:
		return fmt.Sprintf("%q", v)
	}
	return fmt.Sprint(v)
}

// inBase spells a quantity in the base unit of its dimension.
func inBase(q quantity.Quantity) string {
	return strconv.FormatFloat(q.Base, 'g', -1, 64) + " " + fmt.Sprint(q.Dim)
}
