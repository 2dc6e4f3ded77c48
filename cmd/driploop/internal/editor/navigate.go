package editor

import (
	"cmp"
	"slices"
	"strings"

	"driploop/model/verdict"
)

// definition is where the id under the cursor is given.
func (d *document) definition(p position) any {
	word, _ := d.wordAt(p)
	path, ok := d.named(word)
	if !ok {
		return nil
	}
	g := d.lastGood()
	return location{URI: d.uri, Range: lspRange(d.lines, g.record.Places.At(path))}
}

// references are all places that name the id under the cursor, the one where it
// is given first.
func (d *document) references(p position) []location {
	word, _ := d.wordAt(p)
	path, ok := d.named(word)
	if !ok {
		return []location{}
	}
	all := []location{{URI: d.uri, Range: lspRange(d.lines, d.lastGood().record.Places.At(path))}}
	_, id, _ := strings.Cut(path, ".")
	for n, line := range d.lines {
		code, _, _ := strings.Cut(line, " #")
		for at := 0; ; {
			i := strings.Index(code[at:], id)
			if i < 0 {
				break
			}
			from := at + i
			at = from + len(id)
			here := position{n, len([]rune(code[:from]))}
			if found, r := d.wordAt(here); found == id || strings.HasPrefix(found, id+".") || strings.HasSuffix(found, "."+id) {
				r.End.Character = r.Start.Character + len(id)
				if l := (location{URI: d.uri, Range: textRange{here, position{n, here.Character + len([]rune(id))}}}); l.Range.Start != all[0].Range.Start {
					all = append(all, l)
				}
			}
		}
	}
	return all
}

// symbols are the sections of the record with their entries.
func (d *document) symbols() []documentSymbol {
	d.solve()
	r := d.known()
	if r == nil {
		return []documentSymbol{}
	}
	type place struct {
		path string
		at   verdict.Range
	}
	var places []place
	for path, at := range r.Places.All() {
		if strings.Count(path, ".") <= 1 {
			places = append(places, place{path, at})
		}
	}
	slices.SortFunc(places, func(a, b place) int {
		return cmp.Or(cmp.Compare(a.at.Start.Line, b.at.Start.Line), cmp.Compare(a.at.Start.Column, b.at.Start.Column), cmp.Compare(a.path, b.path))
	})
	sections := map[string]int{}
	symbols := []documentSymbol{}
	for _, p := range places {
		section, id, nested := strings.Cut(p.path, ".")
		at := lspRange(d.lines, p.at)
		if i, ok := sections[section]; nested && ok {
			symbols[i].Children = append(symbols[i].Children, documentSymbol{Name: id, Detail: d.kindOf(id), Kind: symbolObject, Range: at, SelectionRange: at})
			symbols[i].Range.End = at.End
		} else if !nested && !strings.Contains(section, "[") {
			sections[section] = len(symbols)
			symbols = append(symbols, documentSymbol{Name: section, Kind: symbolModule, Range: at, SelectionRange: at})
		}
	}
	return symbols
}
