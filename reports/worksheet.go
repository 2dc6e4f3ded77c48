package reports

import (
	"strings"

	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
)

// worksheet is a table of the schedule for spreadsheets: numbers are numbers, and
// their unit stands in the head of the column.
type worksheet struct {
	name  string
	heads []columnHead
	rows  [][]cell
}

// columnHead is that of a column. Without a unit the column holds words.
type columnHead struct {
	name string
	unit string
}

// cell is a text, or a number in the unit of its column.
type cell struct {
	text   string
	number float64
	is     bool // a number
}

// column is a column of a sheet before the units are chosen. Without metric it
// holds words, or bare numbers.
type column struct{ name, metric, us string }

// The columns of quantities, by what they measure.
func amps(name string) column    { return column{name, "A", "A"} }
func volts(name string) column   { return column{name, "V", "V"} }
func percent(name string) column { return column{name, "%", "%"} }
func mohms(name string) column   { return column{name, "mohm", "mohm"} }
func metres(name string) column  { return column{name, "m", "ft"} }
func degrees(name string) column { return column{name, "degC", "degF"} }
func texts(name string) column   { return column{name: name} }

// entryOf is what a row has for a column: words, a quantity, or that it is open.
type entryOf struct {
	text string
	q    quantity.Quantity
	is   bool
}

func wordsOf(text string) entryOf { return entryOf{text: text} }

func figureOf(f figure.Figure) entryOf {
	if !f.Known {
		return wordsOf(openCell)
	}
	return entryOf{q: inUnit(f.Value, f.Unit), is: true}
}

// measureOf is a value of the record; one that nobody wrote is open.
func measureOf(m record.Measure) entryOf {
	if q, ok := m.Get(); ok {
		return entryOf{q: q, is: true}
	}
	return wordsOf(openCell)
}

// optional is a value that not every part of the record has.
func optional(m record.Measure) entryOf {
	if m.State == record.Absent {
		return wordsOf("")
	}
	return measureOf(m)
}

// shareOf is a part as a percentage of a whole.
func shareOf(part, whole figure.Figure) entryOf {
	if !part.Known || !whole.Known || whole.Value == 0 {
		return wordsOf(openCell)
	}
	return entryOf{q: quantity.New(100*part.Value/whole.Value, "%"), is: true}
}

// sheetOf makes a sheet in the units of a system. With both, a quantity whose
// units differ has a column for each.
func sheetOf(name string, units quantity.System, columns []column, rows [][]entryOf) worksheet {
	s := worksheet{name: name, rows: make([][]cell, len(rows))}
	for i, c := range columns {
		for _, unit := range c.units(units) {
			s.heads = append(s.heads, columnHead{c.name, unit})
			for r, row := range rows {
				s.rows[r] = append(s.rows[r], row[i].in(unit))
			}
		}
	}
	return s
}

func (c column) units(s quantity.System) []string {
	switch {
	case s == quantity.US:
		return []string{c.us}
	case s == quantity.Both && c.us != c.metric:
		return []string{c.metric, c.us}
	}
	return []string{c.metric}
}

// sheetDigits is how many digits of a number a sheet keeps.
const sheetDigits = 6

func (e entryOf) in(unit string) cell {
	switch {
	case !e.is:
		return cell{text: Plain(e.text)}
	case unit == "":
		return cell{number: significant(e.q.Base), is: true}
	}
	return cell{number: significant(e.q.In(unit)), is: true}
}

// spread lists words in one cell.
func spread(words []string) entryOf { return wordsOf(strings.Join(words, ", ")) }
