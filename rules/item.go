package rules

import (
	"slices"
	"strconv"
)

// item is any one word of a fact that is a list of words, as "some" binds it.
type item struct {
	list   *operand
	number int // tells it from others of the same list
}

func (i *item) text(at *site) (string, bool) { return at.item, true }
func (i *item) String() string               { return "item " + strconv.Itoa(i.number) + " of " + i.list.name }

// holding holds where a list of words holds a word.
type holding struct {
	list *operand
	word textual
}

func (h holding) holds(at *site) truth {
	word, known := h.word.text(at)
	if !known {
		return no
	}
	return truthOf(slices.Contains(h.list.list(at), word))
}
func (h holding) String() string { return h.word.String() + " in " + h.list.name }

// each stands among the conditions of a body that goes over a list: there has to
// be an item, whatever else is asked of it.
type each struct{ of *item }

func (each) holds(*site) truth { return maybe }
func (e each) String() string  { return e.of.String() }

// someItem holds where conditions hold for one item of a list.
type someItem struct {
	of   *item
	when []condition
}

func (s someItem) holds(at *site) truth {
	list, around, t := s.of.list.list(at), at.item, no
	for i := 0; i < len(list) && t != yes; i++ {
		at.item = list[i]
		t = max(t, all(s.when, at))
	}
	at.item = around
	return t
}

func (s someItem) String() string {
	return "some item of " + s.of.list.name + " (" + conjunction(s.when) + ")"
}

// closed gathers the conditions of a body on the items of lists that it goes
// over, each list's under one "some". A condition on items of two lists is not
// understood.
func closed(when []condition) []condition {
	var own []*item
	for _, c := range when {
		if e, ok := c.(each); ok {
			own = append(own, e.of)
		}
	}
	if len(own) == 0 {
		return when
	}
	var kept []condition
	about := map[*item][]condition{}
	for _, c := range when {
		items := itemsIn(c)
		ours := slices.ContainsFunc(items, func(one *item) bool { return slices.Contains(own, one) })
		switch _, marks := c.(each); {
		case marks:
		case !ours: // of no list, or of one that is gone over around this body
			kept = append(kept, c)
		case len(items) > 1:
			kept = append(kept, doubt{})
		default:
			about[items[0]] = append(about[items[0]], c)
		}
	}
	for _, of := range own {
		kept = append(kept, someItem{of, about[of]})
	}
	return kept
}

// escapes tells whether a value is an item of a list or holds one.
func escapes(v value) bool {
	switch v := v.(type) {
	case *item:
		return true
	case items:
		return slices.ContainsFunc(v, escapes)
	case unordered:
		return slices.ContainsFunc(v, escapes)
	case fields:
		for _, field := range v {
			if escapes(field) {
				return true
			}
		}
	}
	return false
}

// itemsIn returns the items that a condition reads.
func itemsIn(c condition) []*item {
	var found []*item
	add := func(items ...*item) {
		for _, one := range items {
			if !slices.Contains(found, one) {
				found = append(found, one)
			}
		}
	}
	switch c := c.(type) {
	case wording:
		for _, side := range []textual{c.a, c.b} {
			if one, ok := side.(*item); ok {
				add(one)
			}
		}
	case matching:
		for _, side := range []textual{c.text, c.part} {
			if one, ok := side.(*item); ok {
				add(one)
			}
		}
	case holding:
		if one, ok := c.word.(*item); ok {
			add(one)
		}
	case anyOf:
		add(itemsInAll(c)...)
	case noneOf:
		add(itemsInAll(c)...)
	case each:
		add(c.of)
	case someItem:
		add(itemsInAll([][]condition{c.when})...)
		found = slices.DeleteFunc(found, func(one *item) bool { return one == c.of })
	}
	return found
}

func itemsInAll(alternatives [][]condition) []*item {
	var found []*item
	for _, when := range alternatives {
		for _, c := range when {
			found = append(found, itemsIn(c)...)
		}
	}
	return found
}
