package reports

import (
	"fmt"
	"io"
	"time"

	"github.com/xuri/excelize/v2"

	"driploop/model/circuit"
	"driploop/model/quantity"
	"driploop/model/record"
)

// Spreadsheets hold no longer text in one cell.
const longestCell = excelize.TotalCellChars

// ScheduleXLSX writes the schedule as a workbook: a sheet for each table, and
// one that says what it is of. Texts are typed as such, so that none is a formula.
func ScheduleXLSX(w io.Writer, r *record.Record, a *circuit.Analysis, o Options) error {
	if o.Units == "" {
		o.Units = quantity.Both
	}
	s := &worksheets{rec: r, a: a, units: o.Units}
	book := &workbook{File: excelize.NewFile()}
	defer book.Close()
	book.begin(o.At)
	for _, name := range Tables() {
		book.sheet(s.table(name))
	}
	book.about(s.about())
	book.do(book.DeleteSheet("Sheet1"))
	if book.err != nil {
		return fmt.Errorf("make the workbook: %w", book.err)
	}
	return book.Write(w)
}

// workbook keeps the first error.
type workbook struct {
	*excelize.File
	bold, number, text, wrapped int // styles
	err                         error
}

func (b *workbook) do(err error) {
	if b.err == nil {
		b.err = err
	}
}

func (b *workbook) style(s *excelize.Style) int {
	id, err := b.NewStyle(s)
	b.do(err)
	return id
}

func (b *workbook) begin(at time.Time) {
	// The format of general numbers, which shows no more digits than there are.
	b.number = b.style(&excelize.Style{NumFmt: 0, Alignment: &excelize.Alignment{Vertical: "top"}})
	b.text = b.style(&excelize.Style{NumFmt: 49, Alignment: &excelize.Alignment{Vertical: "top"}})
	b.wrapped = b.style(&excelize.Style{NumFmt: 49, Alignment: &excelize.Alignment{Vertical: "top", WrapText: true}})
	b.bold = b.style(&excelize.Style{
		Font:      &excelize.Font{Bold: true},
		Fill:      excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"E6E6E6"}},
		Alignment: &excelize.Alignment{Vertical: "top", WrapText: true},
	})
	properties := &excelize.DocProperties{Title: "Schedule of circuits", Creator: "driploop", Description: Caution}
	if !at.IsZero() {
		properties.Created = at.UTC().Format(time.RFC3339)
		properties.Modified = properties.Created
	}
	b.do(b.SetDocProps(properties))
}

// The widths of columns, in characters, are kept between these.
const (
	narrow = 10
	wide   = 36
)

// headHeight is that of a head of three lines, in points.
const headHeight = 45

// sheet adds a table.
func (b *workbook) sheet(s worksheet) {
	_, err := b.NewSheet(s.name)
	b.do(err)
	for i, h := range s.heads {
		b.set(s.name, i+1, 1, h.label(quantity.Symbol), b.bold)
		name, err := excelize.ColumnNumberToName(i + 1)
		b.do(err)
		b.do(b.SetColWidth(s.name, name, name, s.width(i)))
	}
	for r, row := range s.rows {
		for i, c := range row {
			if c.is {
				b.set(s.name, i+1, r+2, c.number, b.number)
			} else {
				b.set(s.name, i+1, r+2, c.text, b.text)
			}
		}
	}
	b.do(b.SetRowHeight(s.name, 1, headHeight))
	b.page(s.name, len(s.heads), len(s.rows)+1)
}

// width is how wide a column has to be for its texts.
func (s worksheet) width(column int) float64 {
	width := narrow
	for _, row := range s.rows {
		width = max(width, Columns(row[column].text)+2)
	}
	return float64(min(width, wide))
}

// page makes a sheet usable on the screen and on paper: its head stays in sight
// and on every page, and it can be filtered.
func (b *workbook) page(name string, columns, rows int) {
	b.do(b.SetPanes(name, &excelize.Panes{Freeze: true, XSplit: 1, YSplit: 1, TopLeftCell: "B2", ActivePane: "bottomRight"}))
	last, err := excelize.CoordinatesToCellName(columns, max(rows, 2))
	b.do(err)
	b.do(b.AutoFilter(name, "A1:"+last, nil))
	landscape, one, asMany := "landscape", 1, 0
	b.do(b.SetPageLayout(name, &excelize.PageLayoutOptions{Orientation: &landscape, FitToWidth: &one, FitToHeight: &asMany}))
	fit := true
	b.do(b.SetSheetProps(name, &excelize.SheetPropsOptions{FitToPage: &fit}))
	b.do(b.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: name + "!$1:$1", Scope: name}))
	b.do(b.SetHeaderFooter(name, &excelize.HeaderFooterOptions{OddFooter: "&L" + name + "&RPage &P of &N"}))
}

// set writes a text or a number.
func (b *workbook) set(sheet string, column, row int, value any, style int) {
	at, err := excelize.CoordinatesToCellName(column, row)
	b.do(err)
	switch v := value.(type) {
	case string:
		if runes := []rune(v); len(runes) > longestCell {
			v = string(runes[:longestCell-1]) + ellipsis
		}
		b.do(b.SetCellStr(sheet, at, v))
	case float64:
		b.do(b.SetCellFloat(sheet, at, v, -1, 64))
	}
	b.do(b.SetCellStyle(sheet, at, at, style))
}

func (b *workbook) about(lines [][2]string) {
	const name = "about"
	_, err := b.NewSheet(name)
	b.do(err)
	for i, line := range lines {
		b.set(name, 1, i+1, line[0], b.bold)
		b.set(name, 2, i+1, line[1], b.wrapped)
	}
	b.do(b.SetColWidth(name, "A", "A", 2*narrow))
	b.do(b.SetColWidth(name, "B", "B", 3*wide))
}
