package record

import (
	"driploop/model/quantity"
	"driploop/model/record/internal/tree"
)

// listValue reads a list of plain values.
func (d *decoder) listValue(s *spec, n, at *tree.Node, in spot, target any) {
	items, unknown, ok := d.itemsOf(s, n, in)
	if !ok {
		return
	}
	if unknown && s.certain {
		d.fault(at, "%q has to be known; %s", s.key, s.wanted())
		return
	}
	switch v := target.(type) {
	case *Words:
		switch {
		case s.shape == barrelShape && !d.barrelOK(s, items, unknown, at):
		case unknown:
			*v = Words{V: known(items), State: Unknown, at: d.extent(at)}
		default:
			*v = Words{V: known(items), State: Given, at: d.extent(at)}
		}
	case *Span:
		if unknown {
			*v = Span{State: Unknown, at: d.extent(at)}
			return
		}
		if pair, ok := d.spanValue(s, items, at); ok {
			*v = Span{V: pair, State: Given, at: d.extent(at)}
		}
	case *[]string:
		if len(items) != 2 || items[0].text == items[1].text {
			d.fault(at, "%q takes two different terminals, such as %s", s.key, s.example)
			return
		}
		*v = known(items)
	}
}

// item is one plain value of a list.
type item struct {
	text string
	at   *tree.Node
}

func known(items []item) []string {
	texts := make([]string, 0, len(items))
	for _, i := range items {
		if i.text != unknownWord {
			texts = append(texts, i.text)
		}
	}
	return texts
}

// itemsOf checks each item of a list by itself. What it returns is good until the next
// list is read.
func (d *decoder) itemsOf(s *spec, n *tree.Node, in spot) (items []item, unknown, ok bool) {
	d.items, ok = d.items[:0], true
	var first map[string]*tree.Node
	if s.shape == wordsShape && n.Size > 1 {
		first = make(map[string]*tree.Node, min(n.Size, 64))
	}
	for c := n.First; c != nil; c = c.Next {
		if !d.spend() {
			return nil, false, false
		}
		value := c.Aimed()
		d.places.value(in.part, unheard, d.extent(c))
		if value.Kind != tree.Scalar || value.IsNull() {
			d.fault(c, "an item of %q is %s; write plain values, such as %s", s.key, noun(c), s.example)
			ok = false
			continue
		}
		d.items = append(d.items, item{value.Value, c})
		if isUnknown(value) {
			unknown = true
			continue
		}
		if !d.itemOK(s, value.Value, c) {
			ok = false
			continue
		}
		if first == nil {
			continue
		}
		if other, twice := first[value.Value]; twice {
			d.fault(c, "%q is in this list twice; the first one stands in line %d, column %d: keep one", clip(value.Value), d.extent(other).Line, d.extent(other).Column)
			ok = false
		}
		first[value.Value] = c
	}
	return d.items, unknown, ok
}

func (d *decoder) itemOK(s *spec, value string, at *tree.Node) bool {
	switch s.shape {
	case wordsShape:
		if !d.textOK(s, value, at) {
			return false
		}
		d.refer(s.refs, value, d.extent(at))
	case pairShape:
		if !plainID(value) {
			d.fault(at, "%q is no name of a terminal; use %s", clip(value), idHelp)
			return false
		}
	case barrelShape:
		if _, err := d.repeats.size(value); err != nil {
			d.fault(at, "%s", clipSays(err.Error()))
			return false
		}
	}
	return true
}

// barrelOK checks one or two conductor sizes, the smaller first.
func (d *decoder) barrelOK(s *spec, items []item, unknown bool, at *tree.Node) bool {
	if len(items) == 0 || len(items) > 2 {
		d.fault(at, "%q takes the smallest and the largest conductor, such as %s", s.key, s.example)
		return false
	}
	if len(items) == 1 || unknown {
		return true
	}
	a, _ := d.repeats.size(items[0].text) // checked item by item
	b, _ := d.repeats.size(items[1].text)
	if a.System != b.System {
		return true // which is larger takes a table
	}
	if a.Gauge < b.Gauge || a.MM2 > b.MM2 {
		d.fault(at, "%s is larger than %s; write the smaller conductor first, such as %s", a, b, s.example)
		return false
	}
	return true
}

// spanValue reads a least and a greatest value.
func (d *decoder) spanValue(s *spec, items []item, at *tree.Node) (pair [2]quantity.Quantity, ok bool) {
	if len(items) != 2 {
		d.fault(at, "%q takes the least and the greatest value, such as %s", s.key, s.example)
		return pair, false
	}
	ok = true
	for i := range items {
		if q := d.quantity(s, items[i].text, items[i].at); q != nil {
			pair[i] = *q
		} else {
			ok = false
		}
	}
	if ok && pair[0].Base > pair[1].Base {
		d.fault(at, "%s is more than %s; write the least value first, such as %s", pair[0], pair[1], s.example)
		return pair, false
	}
	return pair, ok
}
