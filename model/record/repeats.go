package record

import (
	"hash/maphash"

	"driploop/model/quantity"
)

// repeats remembers texts that were found right in one decoding: a record has the
// same few ratings, lengths and sizes over and over.
type repeats struct {
	quantities learnt[quantity.Dimension, quantity.Quantity]
	sizes      learnt[struct{}, quantity.WireSize]
	fitting    learnt[*form, struct{}]
}

func (r *repeats) forget() {
	r.quantities.forget()
	r.sizes.forget()
	r.fitting.forget()
}

// quantity is quantity.Parse. What it returns is to be copied.
func (r *repeats) quantity(text string, dim quantity.Dimension) (*quantity.Quantity, error) {
	q, at, ok := r.quantities.find(text, dim)
	if ok {
		return q, nil
	}
	read, err := quantity.Parse(text, dim)
	if err == nil {
		r.quantities.keep(at, text, dim, read)
	}
	return &read, err
}

// size is quantity.ParseWireSize.
func (r *repeats) size(text string) (quantity.WireSize, error) {
	size, at, ok := r.sizes.find(text, struct{}{})
	if ok {
		return *size, nil
	}
	read, err := quantity.ParseWireSize(text)
	if err == nil {
		r.sizes.keep(at, text, struct{}{}, read)
	}
	return read, err
}

// fits reports whether a text looks as a form says.
func (r *repeats) fits(form *form, text string) bool {
	if contains(form.common, text) {
		return true
	}
	_, at, ok := r.fitting.find(text, form)
	if !ok && form.match.MatchString(text) {
		r.fitting.keep(at, text, form, struct{}{})
		return true
	}
	return ok
}

// learnt holds what was read of texts as something, such as a dimension: a small hash,
// which is faster than a map with two keys.
type learnt[As comparable, What any] struct {
	slots []slotOf[As, What] // free where the text is ""
	used  int
}

type slotOf[As comparable, What any] struct {
	text string
	as   As
	what What
}

const learntSlots = 512 // a power of two

// find returns what was read of a text, or the slot in which it is to be kept.
func (k *learnt[As, What]) find(text string, as As) (what *What, at int, ok bool) {
	if k.slots == nil {
		k.slots = make([]slotOf[As, What], learntSlots)
	}
	for at = int(maphash.String(hashSeed, text)) & (learntSlots - 1); ; at = (at + 1) & (learntSlots - 1) {
		switch s := &k.slots[at]; {
		case s.text == "":
			return nil, at, false
		case s.text == text && s.as == as:
			return &s.what, at, true
		}
	}
}

// keep remembers what was read, as long as there is room. A text that is empty is not
// worth it.
func (k *learnt[As, What]) keep(at int, text string, as As, what What) {
	if k.used < learntSlots/2 {
		k.slots[at] = slotOf[As, What]{text, as, what}
		k.used++
	}
}

func (k *learnt[As, What]) forget() {
	if k.used > 0 {
		clear(k.slots)
		k.used = 0
	}
}
