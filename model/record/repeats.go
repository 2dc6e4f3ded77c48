package record

import (
	"hash/maphash"

	"driploop/model/quantity"
)

// repeats remembers texts that were found right in one decoding: a record has the
// same few ratings, lengths and sizes over and over.
type repeats struct {
	quantities []readText // by hash; empty where its text is ""
	known      int        // of them
	fitting    map[formText]bool
}

// readText is a quantity with the text that it was read from.
type readText struct {
	text string
	q    quantity.Quantity
}

const quantitiesKept = 512 // a power of two

type formText struct {
	text string
	form *form
}

func (r *repeats) forget() {
	clear(r.quantities)
	r.known = 0
	const most = 1 << 12 // different texts of a large record
	if len(r.fitting) > most {
		r.fitting = nil
	}
	clear(r.fitting)
}

// quantity is quantity.Parse.
func (r *repeats) quantity(text string, dim quantity.Dimension) (quantity.Quantity, error) {
	if r.quantities == nil {
		r.quantities = make([]readText, quantitiesKept)
	}
	at := int(maphash.String(hashSeed, text)) & (quantitiesKept - 1)
	for ; r.quantities[at].text != ""; at = (at + 1) & (quantitiesKept - 1) {
		if p := &r.quantities[at]; p.text == text && p.q.Dim == dim {
			return p.q, nil
		}
	}
	q, err := quantity.Parse(text, dim)
	if err == nil && r.known < quantitiesKept*3/4 {
		r.quantities[at], r.known = readText{text, q}, r.known+1
	}
	return q, err
}

// fits reports whether a text looks as a form says.
func (r *repeats) fits(form *form, text string) bool {
	key := formText{text, form}
	if contains(form.common, text) || r.fitting[key] {
		return true
	}
	if !form.match.MatchString(text) {
		return false
	}
	if r.fitting == nil {
		r.fitting = map[formText]bool{}
	}
	r.fitting[key] = true
	return true
}
