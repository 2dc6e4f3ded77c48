package pdf

import (
	"slices"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
)

// Measures of a page, in mm.
const (
	leftMargin = 18.0
	topMargin  = 16.0
	foot       = 18.0 // kept free below the text
	pageWidth  = 210.0
	pageHeight = 297.0
	textWidth  = pageWidth - 2*leftMargin
)

// Families of the fonts that are embedded.
const (
	sans = "go"
	mono = "gomono"
)

// colour is red, green and blue.
type colour [3]int

// The colours are those of the HTML report on paper.
var (
	ink   = colour{22, 32, 43}
	soft  = colour{75, 88, 101}
	rule  = colour{205, 210, 214}
	tint  = colour{240, 243, 244}
	link  = colour{10, 79, 138}
	good  = colour{28, 110, 74}
	mark  = colour{255, 231, 154}
	alarm = colour{179, 18, 29}
)

// face is how text looks.
type face struct {
	family string
	style  string // "" or "B"
	size   float64
	colour colour
}

var (
	body  = face{sans, "", 9.5, ink}
	bold  = face{sans, "B", 9.5, ink}
	small = face{sans, "", 8, soft}
	code  = face{mono, "", 8, ink}
	tiny  = face{sans, "", 6.8, ink}
)

// mmPerPoint turns the size of a font into mm.
const mmPerPoint = 25.4 / 72

// leading is the height of a line, in mm.
func (f face) leading() float64 { return 1.32 * f.size * mmPerPoint }

// doc is a document that text flows through, from column to column and page to
// page.
type doc struct {
	*fpdf.Fpdf
	links  map[string]int
	there  map[string]bool // the links whose place is known
	y      float64
	left   float64 // of the text
	width  float64
	bottom float64
	flow   columns
}

// columns is how many there are on a page, and where text is in them.
type columns struct {
	number, at int
	top        float64 // of the columns on this page
}

const gutter = 6.0

// newDoc begins a document. The same text gives the same bytes: the only time in
// it is the one that is given.
func newDoc(title string, at time.Time) *doc {
	if at.IsZero() {
		at = time.Unix(0, 0)
	}
	f := fpdf.New("P", "mm", "A4", "")
	f.SetTitle(title, true)
	f.SetCreator("driploop", true)
	f.SetLang("en")
	f.SetCreationDate(at.UTC())
	f.SetModificationDate(at.UTC())
	f.SetCatalogSort(true)
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(leftMargin, topMargin, leftMargin)
	f.SetCellMargin(0)
	f.SetDisplayMode("fullwidth", "default")
	// The library writes into the fonts that it is given.
	f.AddUTF8FontFromBytes(sans, "", slices.Clone(goregular.TTF))
	f.AddUTF8FontFromBytes(sans, "B", slices.Clone(gobold.TTF))
	f.AddUTF8FontFromBytes(mono, "", slices.Clone(gomono.TTF))
	f.AliasNbPages("{pages}")
	d := &doc{Fpdf: f, links: map[string]int{}, there: map[string]bool{}, left: leftMargin, width: textWidth, bottom: pageHeight - foot}
	f.SetFooterFunc(func() {
		wide, high := f.GetPageSize()
		d.use(face{sans, "", 7.5, soft})
		f.SetXY(leftMargin, high-12)
		f.CellFormat(wide-2*leftMargin-30, 4, d.clip(title, wide-2*leftMargin-32), "", 0, "L", false, 0, "")
		f.SetXY(wide-leftMargin-30, high-12)
		f.CellFormat(30, 4, "page "+itoa(f.PageNo())+" of {pages}", "", 0, "R", false, 0, "")
	})
	d.newPage()
	return d
}

func (d *doc) newPage() {
	d.AddPage()
	d.y, d.flow.top, d.flow.at = topMargin, topMargin, 0
}

func (d *doc) use(f face) {
	d.SetFont(f.family, f.style, f.size)
	d.SetTextColor(f.colour[0], f.colour[1], f.colour[2])
}

func (d *doc) fill(c colour) { d.SetFillColor(c[0], c[1], c[2]) }
func (d *doc) pen(c colour, width float64) {
	d.SetDrawColor(c[0], c[1], c[2])
	d.SetLineWidth(width)
}

// x is the left edge of the column.
func (d *doc) x() float64 {
	return d.left + float64(d.flow.at)*(d.column()+gutter)
}

// column is the width of a column.
func (d *doc) column() float64 {
	if d.flow.number < 2 {
		return d.width
	}
	return (d.width - gutter*float64(d.flow.number-1)) / float64(d.flow.number)
}

// need makes room for a height: what follows is not torn apart if a page can
// hold it.
func (d *doc) need(height float64) {
	if d.y+height <= d.bottom {
		return
	}
	if d.flow.at+1 < d.flow.number {
		d.flow.at++
		d.y = d.flow.top
		return
	}
	d.newPage()
}

// skip leaves a gap, but not at the top of a page.
func (d *doc) skip(height float64) {
	if d.y > d.flow.top {
		d.y += height
	}
}

// link is the number of the place of an id; it may be linked to before it is
// there.
func (d *doc) link(id string) int {
	if id == "" {
		return 0
	}
	id = strings.TrimPrefix(id, "#")
	if d.links[id] == 0 {
		d.links[id] = d.AddLink()
	}
	return d.links[id]
}

// anchor makes this line the place of an id.
func (d *doc) anchor(id string) {
	d.SetLink(d.placed(id), max(d.y-2, 0), d.PageNo())
}

// placed is the link of an id whose place is being told.
func (d *doc) placed(id string) int {
	d.there[strings.TrimPrefix(id, "#")] = true
	return d.link(id)
}

// unplaced lists the ids that are linked to and are nowhere.
func (d *doc) unplaced() []string {
	var ids []string
	for id := range d.links {
		if !d.there[id] {
			ids = append(ids, id)
		}
	}
	slices.Sort(ids)
	return ids
}
