package editor

import (
	"fmt"
	"slices"
	"strings"

	"driploop/model/copper"
	"driploop/model/quantity"
	"driploop/model/record"
)

// complete lists what could stand at the cursor.
func (d *document) complete(p position) []completionItem {
	c := cursorAt(d.lines, p)
	if c.key {
		return d.keys(c)
	}
	return d.values(c)
}

// keys lists the keys that the mapping lacks.
func (d *document) keys(c cursor) []completionItem {
	items := []completionItem{}
	for i, f := range record.KeysAt(c.String(), d.kindAt) {
		if slices.Contains(c.given, f.Key) || d.has(c, f.Key) {
			continue
		}
		item := completionItem{
			Label: f.Key, Kind: itemProperty, Detail: f.Says, InsertText: f.Key + ": ", SortText: fmt.Sprintf("%03d", i),
			Documentation: &markup{"markdown", d.explain(join(c.String(), f.Key))},
		}
		items = append(items, item)
	}
	return items
}

// has tells whether the mapping has the key already, further up or down.
func (d *document) has(c cursor, key string) bool {
	r := d.known()
	if r == nil {
		return false
	}
	_, there := r.Places.Find(join(c.String(), key))
	return there
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// kindAt tells kinds of components, that of a half typed one from its line.
func (d *document) kindAt(id string) string {
	if kind := d.kindOf(id); kind != "" {
		return kind
	}
	for _, line := range d.lines {
		if rest, ok := strings.CutPrefix(strings.TrimSpace(line), id+":"); ok {
			if _, after, ok := strings.Cut(rest, "kind: "); ok {
				kind, _, _ := strings.Cut(after, ",")
				return strings.Trim(kind, " }")
			}
		}
	}
	return ""
}

// values lists what the value of a key could be.
func (d *document) values(c cursor) []completionItem {
	f, ok := record.Describe(c.String(), d.kindAt)
	if !ok || f.Part {
		return []completionItem{}
	}
	r := d.known()
	items := []completionItem{}
	add := func(kind int, labels ...string) {
		for _, label := range labels {
			items = append(items, completionItem{Label: label, Kind: kind, Detail: f.Says, SortText: fmt.Sprintf("%03d", len(items))})
		}
	}
	add(itemValue, f.Words...)
	key := c.path[len(c.path)-1]
	switch {
	case len(f.Words) > 0:
	case f.Example == "true":
		add(itemValue, "true", "false")
	case key == "size":
		for _, system := range []quantity.WireSystem{quantity.AWG, quantity.MM2} {
			for _, size := range copper.UsualSizes(system) {
				add(itemValue, size.String())
			}
		}
	case key == "colour":
		add(itemValue, colours()...)
	case r != nil:
		add(itemReference, named(r, c, key)...)
	}
	if f.Example != "" && len(items) == 0 {
		add(itemValue, f.Example)
	}
	add(itemValue, "unknown")
	return items
}

// named lists the ids of the record that a key can name.
func named(r *record.Record, c cursor, key string) []string {
	var ids []string
	switch {
	case (key == "from" || key == "to") && len(c.path) == 3 && c.path[0] == "conductors":
		for _, part := range r.Components {
			names, _ := record.TerminalsOf(part)
			for _, t := range names {
				ids = append(ids, part.ID+"."+t)
			}
		}
	case key == "space", key == "from", key == "to":
		for _, s := range r.Spaces {
			ids = append(ids, s.ID)
		}
	case key == "passes", key == "members", key == "conductor":
		for _, w := range r.Conductors {
			ids = append(ids, w.ID)
		}
	case key == "bundle":
		for _, b := range r.Bundles {
			ids = append(ids, b.ID)
		}
	case key == "load", key == "loads":
		for _, part := range r.Components {
			if record.KindOf(part.Kind.V).Load {
				ids = append(ids, part.ID)
			}
		}
	case key == "penetration":
		for _, p := range r.Penetrations {
			ids = append(ids, p.ID)
		}
	}
	return ids
}

// colours are those of cable that are usual: common practice, no source.
func colours() []string {
	return []string{"red", "yellow", "black", "green", "green/yellow", "brown", "orange", "blue", "dark-blue", "white", "grey", "purple", "pink"}
}
