package reports

import "strings"

// table lines up rows of cells under their heads. The last column is wrapped
// where the page ends, so the longest text belongs there.
type table struct {
	heads []string
	right []bool // columns of numbers stand to the right
	rows  [][]string
}

// newTable names the columns; a head that begins with ">" is of numbers.
func newTable(heads ...string) *table {
	t := &table{}
	for _, head := range heads {
		name, right := strings.CutPrefix(head, ">")
		t.heads = append(t.heads, name)
		t.right = append(t.right, right)
	}
	return t
}

func (t *table) add(cells ...string) { t.rows = append(t.rows, cells) }

// table writes the table, indented.
func (p *page) table(t *table, indent int) {
	if len(t.rows) == 0 {
		return
	}
	widths := make([]int, len(t.heads))
	for _, row := range append([][]string{t.heads}, t.rows...) {
		for i, cell := range row {
			widths[i] = max(widths[i], Columns(Plain(cell)))
		}
	}
	p.row(t, widths, t.heads, indent, faint)
	for _, row := range t.rows {
		p.row(t, widths, row, indent, ordinary)
	}
}

func (p *page) row(t *table, widths []int, cells []string, indent int, i ink) {
	at := indent
	line := strings.Repeat(" ", indent)
	last := len(t.heads) - 1
	for n, cell := range cells[:last] {
		cell = Plain(cell)
		pad := strings.Repeat(" ", widths[n]-Columns(cell))
		if t.right[n] {
			line += pad + cell + "  "
		} else {
			line += cell + pad + "  "
		}
		at += widths[n] + 2
	}
	rest := cells[last]
	if t.right[last] {
		rest = strings.Repeat(string(glue), widths[last]-Columns(Plain(rest))) + rest
	}
	if rest == "" {
		line = strings.TrimRight(line, " ")
	}
	p.raw(p.inks.paint(i, strings.ReplaceAll(line, string(glue), " ")))
	p.fill(at, 0, at, []span{in(i, rest)})
}
