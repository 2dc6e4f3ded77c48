package wirelist

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"driploop/model/record"
)

// Options are what a list does not say.
type Options struct {
	System  string         // nominal voltage of the installation, such as 12 V
	Number  string         // of the job
	Columns map[int]string // columns said by hand, by their number from 0
}

// Imported is the record that a list came to.
type Imported struct {
	Text       []byte
	Conductors int
	// Notes say by cell what was taken for what, and what was not understood; all
	// of the latter stands in the record as a comment.
	Notes []string
}

// Import makes a record of a list.
func Import(name string, g *Grid, o Options) (*Imported, error) {
	at, heads, ok := findHead(g.Rows)
	if len(o.Columns) > 0 {
		at, heads = saidHeads(g.Rows, o.Columns)
		ok = true
	}
	if !ok {
		return nil, fmt.Errorf("%s: no row names the columns \"from\" and \"to\"; say them with --columns, such as --columns A=id,C=from,D=to", name)
	}
	i := &importer{grid: g, heads: heads, notes: slices.Clone(g.Notes), parts: map[string]*equipment{}, ids: map[string]bool{}}
	i.title(at)
	for row := at + 1; row < len(g.Rows); row++ {
		i.row(row)
	}
	if len(i.wires) == 0 {
		return nil, errors.New(name + ": below the header stands no row with both ends of a conductor")
	}
	text := i.write(o)
	if _, faults := record.Decode(name, text); len(faults) > 0 {
		return nil, fmt.Errorf("%s: the list cannot be made a record: %s", name, faults[0].Says)
	}
	return &Imported{Text: text, Conductors: len(i.wires), Notes: i.notes}, nil
}

// saidHeads are the columns said by hand, with the units of the header if one
// can be found.
func saidHeads(rows [][]string, said map[int]string) (int, map[int]head) {
	at, found, ok := findHead(rows)
	if !ok {
		at = -1
		for i := 0; i < min(len(rows), maxTitle); i++ {
			if isHeader(rows[i]) {
				at = i
				break
			}
		}
	}
	heads := map[int]head{}
	for col, name := range said {
		heads[col] = head{name: name}
		if h := found[col]; h.name == name {
			heads[col] = h
		} else if at >= 0 && col < len(rows[at]) {
			if h, good := readHead(rows[at][col]); good && h.name == name {
				heads[col] = h
			}
		}
	}
	return at, heads
}

// isHeader reports whether a row names any column.
func isHeader(row []string) bool {
	return slices.ContainsFunc(row, func(text string) bool { _, ok := readHead(text); return ok })
}

// wire is a conductor of the list.
type wire struct {
	id     string
	fields [][2]string // key and value as YAML, in order
	above  []string    // comments
}

// importer reads rows.
type importer struct {
	grid  *Grid
	heads map[int]head
	notes []string
	order []string
	parts map[string]*equipment
	ids   map[string]bool
	wires []wire
	lost  []string // rows that are no conductor
}

func (i *importer) note(format string, args ...any) {
	i.notes = append(i.notes, fmt.Sprintf(format, args...))
}

// title keeps what stands above the header.
func (i *importer) title(at int) {
	for row := 0; row <= at && row < len(i.grid.Rows); row++ {
		for col, text := range i.grid.Rows[row] {
			if text = strings.TrimSpace(text); text == "" {
				continue
			}
			if row < at {
				i.lost = append(i.lost, fmt.Sprintf("%s: %s", cell(row, col), oneLine(text)))
			} else if _, known := i.heads[col]; !known {
				i.note("%s: column %q is none that a record has; its cells are kept as comments", cell(row, col), oneLine(text))
			}
		}
	}
}

// row reads one row.
func (i *importer) row(row int) {
	values, extra := map[string]string{}, []string{}
	where := map[string]string{}
	for col, text := range i.grid.Rows[row] {
		if text = strings.TrimSpace(text); text == "" {
			continue
		}
		if h, known := i.heads[col]; known && values[h.name] == "" {
			values[h.name], where[h.name] = text, cell(row, col)
			continue
		} else if known && values[h.name] != text {
			i.note("%s: %q is a second %s beside %s; it is kept as a comment", cell(row, col), oneLine(text), h.name, where[h.name])
		}
		extra = append(extra, fmt.Sprintf("%s: %s", cell(row, col), oneLine(text)))
	}
	if len(values)+len(extra) == 0 {
		return
	}
	if values[colFrom] == "" || values[colTo] == "" {
		i.note("row %d: it does not say both ends; it is kept as a comment", row+1)
		i.keep(values, where, extra)
		return
	}
	w := wire{id: i.id(values[colID], where[colID], row), above: extra}
	role := i.role(&w, values, where, row)
	w.fields = append(w.fields,
		[2]string{"from", i.place(values[colFrom], values[colFromTerminal], values[colFromKind], where[colFrom], role, true)},
		[2]string{"to", i.place(values[colTo], values[colToTerminal], values[colToKind], where[colTo], role, false)},
		[2]string{"role", role})
	if w.fields[0][1] == w.fields[1][1] || i.onOnePoint(w.fields[0][1], w.fields[1][1]) {
		i.note("row %d: both ends are %s; it is kept as a comment", row+1, w.fields[0][1])
		i.keep(values, where, extra)
		return
	}
	for _, col := range slices.Sorted(maps.Keys(i.heads)) {
		if h := i.heads[col]; where[h.name] == cell(row, col) {
			i.value(&w, h, values[h.name], where[h.name])
		}
	}
	slices.SortStableFunc(w.fields[3:], func(a, b [2]string) int { return strings.Compare(a[0], b[0]) })
	i.wires = append(i.wires, w)
}

// keep keeps the cells of a row that is no conductor.
func (i *importer) keep(values, where map[string]string, extra []string) {
	for _, name := range slices.Sorted(maps.Keys(values)) {
		extra = append(extra, fmt.Sprintf("%s: %s", where[name], oneLine(values[name])))
	}
	i.lost = append(i.lost, extra...)
}

// id gives the conductor an id of its own.
func (i *importer) id(text, where string, row int) string {
	id := identifierKeepingCase(text)
	switch {
	case text == "":
		id = fmt.Sprintf("W%d", row+1)
		i.note("row %d: no id; it is called %s", row+1, id)
	case id == "" || id == "unknown" || id == "none":
		id = fmt.Sprintf("W%d", row+1)
		i.note("%s: %q can be no id; it is called %s", where, oneLine(text), id)
	case id != text:
		i.note("%s: %q is written %s", where, oneLine(text), id)
	}
	first := id
	for n := 2; i.ids[id]; n++ {
		id = fmt.Sprintf("%s-%d", first, n)
	}
	if id != first {
		i.note("row %d: %s is here twice; this one is called %s", row+1, first, id)
	}
	i.ids[id] = true
	return id
}

// role tells what the conductor carries. Where the list does not say, its colour
// or terminal may; else it is taken as positive, which asks the most of it.
func (i *importer) role(w *wire, values, where map[string]string, row int) string {
	if text := values[colRole]; text != "" {
		if role, ok := roleOf(text); ok {
			return role
		}
		i.note("%s: role %q was not understood", where[colRole], oneLine(text))
		w.above = append(w.above, fmt.Sprintf("%s: %s", where[colRole], oneLine(text)))
	}
	for _, end := range []string{colFrom, colTo} {
		_, terminal := splitPlace(values[end])
		if t := values[end+" terminal"]; t != "" {
			terminal = terminalWord(t)
		}
		if terminal == "neg" {
			return "negative"
		}
		if terminal == "pos" {
			return "positive"
		}
	}
	for _, end := range []string{colFrom, colTo} {
		if returns(values[end]) {
			i.note("row %d: taken as negative, since it lands on %q", row+1, oneLine(values[end]))
			return "negative"
		}
	}
	i.note("row %d: the list does not say what it carries; taken as positive, which asks the most of it: look", row+1)
	return "positive"
}

// write prints the record.
func (i *importer) write(o Options) []byte {
	var b strings.Builder
	number := o.Number
	if number == "" {
		number = "unknown"
	} else {
		number = record.Spell(number)
	}
	fmt.Fprintf(&b, "# Made from a wire list. Comments name the cells that had no place in a record.\ndriploop: %d\njob: {number: %s}\nvessel: {system: %s}\n", record.Version, number, o.System)
	b.WriteString("\ncomponents:\n")
	for _, id := range i.order {
		p := i.parts[id]
		line := fmt.Sprintf("  %s: {kind: %s%s}", id, p.kind, linksOf(p))
		if !p.understood {
			line += "  # look: what this is was not understood"
		}
		b.WriteString(line + "\n")
	}
	b.WriteString("\nconductors:\n")
	for _, w := range i.wires {
		for _, c := range w.above {
			b.WriteString("  # " + c + "\n")
		}
		var fields []string
		for _, f := range w.fields {
			fields = append(fields, f[0]+": "+f[1])
		}
		b.WriteString("  " + w.id + ": {" + strings.Join(fields, ", ") + "}\n")
	}
	for n, c := range i.lost {
		if n == 0 {
			b.WriteString("\n# Cells of the list that are part of no conductor:\n")
		}
		b.WriteString("# " + c + "\n")
	}
	return []byte(b.String())
}

// oneLine makes a text of a cell safe for a comment and a message.
func oneLine(text string) string {
	text = strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f || r >= 0x80 && r < 0xa0 || r == '\u2028' || r == '\u2029' || r == '\ufeff' || r == '\ufffd' || r == '\ufffe' || r == '\uffff' {
			return ' '
		}
		return r
	}, text)
	return strings.Join(strings.Fields(text), " ")
}
