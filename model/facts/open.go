package facts

import (
	"bytes"
	"encoding/json"
	"maps"
	"slices"

	"github.com/invopop/jsonschema"

	"driploop/model/figure"
)

// Open lists the facts of a subject that are not known and what is missing for
// each. Many facts of a sparse record are open and few are asked for, so that it
// is a plain list in pieces that grow, and the path of an entry that is merely
// not written is put together when it is asked for.
type Open struct{ pieces [][]lack }

// lack is one thing that leaves a fact open; there can be several.
type lack struct {
	fact string
	// of is the path of what lacks an entry, and entry the entry's name below it;
	// empty where gaps say more.
	of, entry string
	gaps      []figure.Gap
}

// few is for how many open facts the first piece has room; each further one has
// twice that of the one before.
const few = 8

func (o *Open) add(one lack) {
	last := len(o.pieces) - 1
	if last < 0 || len(o.pieces[last]) == cap(o.pieces[last]) {
		last++
		o.pieces = append(o.pieces, make([]lack, 0, few<<last))
	}
	o.pieces[last] = append(o.pieces[last], one)
}

// each calls f with what leaves facts open, in the order in which it was added,
// until f returns false.
func (o *Open) each(f func(*lack) bool) {
	for _, piece := range o.pieces {
		for i := range piece {
			if !f(&piece[i]) {
				return
			}
		}
	}
}

// Of returns what is missing for a fact; nothing for one that is known.
func (o *Open) Of(fact string) []figure.Gap {
	var gaps []figure.Gap
	o.Each(fact, func(g figure.Gap) { gaps = append(gaps, g) })
	return gaps
}

// Each calls f with what is missing for a fact.
func (o *Open) Each(fact string, f func(figure.Gap)) {
	for _, piece := range o.pieces {
		for i := range piece {
			one := &piece[i]
			if one.fact != fact {
				continue
			}
			if one.entry != "" {
				f(figure.Missing(one.of + "." + one.entry))
			}
			for _, g := range one.gaps {
				f(g)
			}
		}
	}
}

// Has tells whether a fact is open.
func (o *Open) Has(fact string) bool {
	for one := range o.each {
		if one.fact == fact {
			return true
		}
	}
	return false
}

// Names returns the facts that are open, in order.
func (o *Open) Names() []string {
	var names []string
	for one := range o.each {
		names = append(names, one.fact)
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// without returns a list of its own without a fact.
func (o *Open) without(fact string) Open {
	var rest Open
	for one := range o.each {
		if one.fact != fact {
			rest.add(*one)
		}
	}
	return rest
}

// IsZero tells whether no fact is open; JSON has no entry then.
func (o Open) IsZero() bool { return len(o.Names()) == 0 }

// MarshalJSON writes an object with the gaps of each fact, by name.
func (o Open) MarshalJSON() ([]byte, error) {
	gaps := map[string][]figure.Gap{}
	for _, fact := range o.Names() {
		gaps[fact] = o.Of(fact)
	}
	var out bytes.Buffer
	encoder := json.NewEncoder(&out)
	encoder.SetEscapeHTML(false) // that is for whoever encodes the document to choose
	err := encoder.Encode(gaps)
	return out.Bytes(), err
}

// UnmarshalJSON reads the same.
func (o *Open) UnmarshalJSON(text []byte) error {
	var gaps map[string][]figure.Gap
	if err := json.Unmarshal(text, &gaps); err != nil {
		return err
	}
	*o = OpenFor(gaps)
	return nil
}

// OpenFor lists open facts with what is missing for each.
func OpenFor(gaps map[string][]figure.Gap) Open {
	var o Open
	for _, fact := range slices.Sorted(maps.Keys(gaps)) {
		o.add(lack{fact: fact, gaps: gaps[fact]})
	}
	return o
}

// JSONSchema returns the schema of that object.
func (Open) JSONSchema() *jsonschema.Schema {
	reflector := jsonschema.Reflector{Anonymous: true, DoNotReference: true}
	schema := reflector.Reflect(map[string][]figure.Gap{})
	schema.Version = ""
	return schema
}
