package record

import "driploop/model/quantity"

// repeats remembers texts that were found right in one decoding: a record has the
// same few ratings, lengths and sizes over and over.
type repeats struct {
	quantities map[quantityText]quantity.Quantity
	fitting    map[formText]bool
}

type quantityText struct {
	text string
	dim  quantity.Dimension
}

type formText struct {
	text string
	form *form
}

func (r *repeats) forget() {
	const most = 1 << 12 // different texts of a large record
	if len(r.quantities)+len(r.fitting) > most {
		*r = repeats{}
	}
	clear(r.quantities)
	clear(r.fitting)
}

// quantity is quantity.Parse.
func (r *repeats) quantity(text string, dim quantity.Dimension) (quantity.Quantity, error) {
	key := quantityText{text, dim}
	if q, ok := r.quantities[key]; ok {
		return q, nil
	}
	q, err := quantity.Parse(text, dim)
	if err == nil {
		if r.quantities == nil {
			r.quantities = map[quantityText]quantity.Quantity{}
		}
		r.quantities[key] = q
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
