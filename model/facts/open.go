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
// is a chain through one list of the whole document.
type Open struct {
	in          *store
	first, last int32 // of the chain, counted from 1; 0 for none
}

func (o *Open) add(fact string, because reasons) {
	st := o.store()
	st.lacks = append(st.lacks, lack{fact: fact, because: because})
	at := int32(len(st.lacks))
	if o.first == 0 {
		o.first = at
	} else {
		st.lacks[o.last-1].next = at
	}
	o.last = at
}

// store is where the list lies: with the document, or by itself.
func (o *Open) store() *store {
	if o.in == nil {
		o.in = new(store)
	}
	return o.in
}

// each calls f with what leaves facts open, in the order in which it was added,
// until f returns false.
func (o *Open) each(f func(*lack) bool) {
	for at := o.first; at != 0; {
		one := &o.in.lacks[at-1]
		at = one.next
		if !f(one) {
			return
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
	for at := o.first; at != 0; {
		one := &o.in.lacks[at-1]
		at = one.next
		if one.fact != fact {
			continue
		}
		some := o.in.of(one.because)
		for i := range some {
			f(some[i].gap())
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
		if one.fact == fact {
			continue
		}
		st := rest.store()
		first := len(st.reasons)
		st.reasons = append(st.reasons, o.in.of(one.because)...)
		rest.add(one.fact, reasons{int32(first), one.because.count})
	}
	return rest
}

// IsZero tells whether no fact is open; JSON has no entry then.
func (o Open) IsZero() bool { return o.first == 0 }

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
		o.add(fact, o.store().gaps(gaps[fact]))
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
