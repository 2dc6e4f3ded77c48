package pdf

import "strings"

// column is the head of a column of a table.
type column struct {
	head  string
	right bool
}

// cell is one text of a table, linked to the place of an id if to is set.
type cell struct{ text, to string }

// row is a line of a table; id is its place, and a band runs over all columns.
type row struct {
	id    string
	cells []cell
	band  string
}

const (
	cellPad  = 1.2
	rowPad   = 0.9
	tableRow = 7.6
)

// table writes a table whose head stands on every page that it runs over. A row
// is never torn apart.
func (d *doc) table(columns []column, rows []row) {
	text := face{sans, "", tableRow, ink}
	heads := face{sans, "B", tableRow, soft}
	widths := d.widths(columns, rows, text, heads)
	head := make([]cell, len(columns))
	for i, c := range columns {
		head[i] = cell{text: c.head}
	}
	height := d.height(head, widths, heads)
	writeHead := func() {
		d.fill(tint)
		d.Rect(d.x(), d.y, sum(widths), height, "F")
		d.cells(columns, head, widths, heads, height)
	}
	for i, r := range rows {
		h := d.height(r.cells, widths, text)
		if r.band != "" {
			h = heads.leading() + 2*rowPad + 1.5
		}
		want := h
		if i == 0 {
			want += height
		}
		if r.band != "" && i+1 < len(rows) {
			want += d.height(rows[i+1].cells, widths, text)
		}
		page := d.PageNo()
		d.need(want)
		if i == 0 || d.PageNo() != page {
			writeHead()
		}
		if r.id != "" {
			d.anchor(r.id)
		}
		if r.band != "" {
			d.use(face{sans, "B", tableRow, ink})
			d.SetXY(d.x()+cellPad, d.y+1.5)
			d.CellFormat(60, h-1.5, shown(r.band), "", 0, "L", false, 0, "")
			d.y += h
		} else {
			d.cells(columns, r.cells, widths, text, h)
		}
		d.pen(rule, .15)
		d.Line(d.x(), d.y, d.x()+sum(widths), d.y)
	}
	d.y += 2
}

// cells writes one row.
func (d *doc) cells(columns []column, row []cell, widths []float64, f face, height float64) {
	x := d.x()
	for i, c := range row {
		width := widths[i] - 2*cellPad
		align := "L"
		if columns[i].right {
			align = "R"
		}
		for n, line := range d.wrap(c.text, f, width, width) {
			d.use(f)
			d.SetXY(x+cellPad, d.y+rowPad+float64(n)*f.leading())
			d.CellFormat(width, f.leading(), line, "", 0, align, false, d.link(c.to), "")
		}
		x += widths[i]
	}
	d.y += height
}

func (d *doc) height(row []cell, widths []float64, f face) float64 {
	most := 1
	for i, c := range row {
		width := widths[i] - 2*cellPad
		most = max(most, len(d.wrap(c.text, f, width, width)))
	}
	return float64(most)*f.leading() + 2*rowPad
}

// widths gives each column what its texts take; where that is too much the wide
// ones share what is left.
func (d *doc) widths(columns []column, rows []row, text, heads face) []float64 {
	natural, least := make([]float64, len(columns)), make([]float64, len(columns))
	measure := func(i int, s string) {
		s = shown(s)
		natural[i] = max(natural[i], d.GetStringWidth(s)+2*cellPad+.2)
		for _, word := range strings.Fields(s) {
			least[i] = max(least[i], d.GetStringWidth(word)+2*cellPad+.2)
		}
	}
	d.use(heads)
	for i, c := range columns {
		measure(i, c.head)
	}
	d.use(text)
	for _, r := range rows {
		for i, c := range r.cells {
			measure(i, c.text)
		}
	}
	room := d.column()
	if total := sum(natural); total <= room {
		for i := range natural {
			natural[i] += (room - total) / float64(len(natural))
		}
		return natural
	}
	return share(natural, least, room)
}

// share cuts widths down to a room: every column its longest word, within
// reason, and the rest in proportion to what it lacks.
func share(natural, least []float64, room float64) []float64 {
	widths := make([]float64, len(natural))
	most := room / 2.5
	lack := 0.0
	for i := range natural {
		widths[i] = min(least[i], most)
		lack += natural[i] - widths[i]
	}
	if left := room - sum(widths); left > 0 {
		for i := range widths {
			widths[i] += left * (natural[i] - widths[i]) / lack
		}
		return widths
	}
	scale := room / sum(widths)
	for i := range widths {
		widths[i] *= scale
	}
	return widths
}

func sum(values []float64) float64 {
	total := 0.0
	for _, v := range values {
		total += v
	}
	return total
}
