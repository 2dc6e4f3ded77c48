// Package wirelist turns the wire lists that yards keep in spreadsheets into
// records, and back. Nothing in a list is dropped in silence: what is not
// understood is reported by cell and kept as a comment.
package wirelist

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"driploop/model/quantity"
)

// Columns that a list can have, by the name of what they hold.
const (
	colID           = "id"
	colRole         = "role"
	colFrom         = "from"
	colFromTerminal = "from terminal"
	colFromKind     = "from kind"
	colTo           = "to"
	colToTerminal   = "to terminal"
	colToKind       = "to kind"
	colSize         = "size"
	colColour       = "colour"
	colInsulation   = "insulation"
	colLength       = "length"
	colSheath       = "sheath"
	colDiameter     = "diameter"
	colClass        = "class"
	colStandard     = "standard"
)

// column is one kind of column, with the words by which a header names it.
type column struct {
	name  string
	words []string
	unit  bool // a unit in the header holds for its cells
}

// columns lists all kinds in the order in which lists are written.
func columns() []column {
	return []column{
		{colID, []string{"id", "wire", "wire id", "wire no", "wire number", "no", "nr", "number", "tag", "cable", "cable no", "cable number", "conductor", "label", "wire label", "ref", "item", "circuit", "leitung", "kabel", "fil", "cavo", "draad"}, false},
		{colRole, []string{"role", "function", "polarity", "pole", "duty"}, false},
		{colFrom, []string{"from", "source", "origin", "start", "starts at", "from device", "from component", "from equipment", "von", "de", "desde", "da", "van", "från", "fra"}, false},
		{colFromTerminal, []string{"from terminal", "from pin", "from stud", "terminal from", "pin from", "source terminal", "from post"}, false},
		{colFromKind, []string{"from kind", "from type"}, false},
		{colTo, []string{"to", "destination", "dest", "end", "ends at", "to device", "to component", "to equipment", "target", "nach", "bis", "vers", "hacia", "hasta", "a", "naar", "till", "til"}, false},
		{colToTerminal, []string{"to terminal", "to pin", "to stud", "terminal to", "pin to", "destination terminal", "to post"}, false},
		{colToKind, []string{"to kind", "to type"}, false},
		{colSize, []string{"size", "gauge", "awg", "mm2", "section", "cross section", "csa", "wire size", "wire gauge", "cable size", "conductor size", "ga", "area", "sae", "querschnitt", "sección", "sezione", "doorsnede", "tvärsnitt"}, true},
		{colColour, []string{"colour", "color", "wire colour", "wire color", "insulation colour", "insulation color", "col", "farbe", "couleur", "colore", "kleur", "färg", "farge"}, false},
		{colInsulation, []string{"insulation", "insulation rating", "temperature rating", "temp rating", "temp", "rating"}, true},
		{colLength, []string{"length", "len", "cut length", "wire length", "cable length", "run", "länge", "longueur", "longitud", "lunghezza", "lengte", "längd", "lengde"}, true},
		{colSheath, []string{"sheath", "multicore", "cable id", "jacket"}, false},
		{colDiameter, []string{"diameter", "od", "outside diameter", "outer diameter"}, true},
		{colClass, []string{"class", "stranding"}, false},
		{colStandard, []string{"standard", "marking", "spec"}, false},
	}
}

// Names lists the names of the columns, for help.
func Names() []string {
	var names []string
	for _, c := range columns() {
		names = append(names, c.name)
	}
	return names
}

// head is what a header says: the column and the unit that it names.
type head struct {
	name string
	unit string
}

// readHead understands a header such as "Length (ft)" or "AWG".
func readHead(text string) (head, bool) {
	words, unit := text, ""
	if i := strings.IndexAny(text, "([,/"); i > 0 {
		words, unit = text[:i], strings.Trim(text[i:], "([,/ )]")
	}
	plain := normal(words)
	for _, c := range columns() {
		if !slices.Contains(c.words, plain) {
			bare, last := withoutUnit(plain)
			if !c.unit || !slices.Contains(c.words, bare) {
				continue
			}
			unit = last
		}
		h := head{name: c.name}
		if c.unit {
			h.unit = unit
			switch plain {
			case "awg", "sae":
				h.unit = strings.ToUpper(plain)
			case "gauge", "wire gauge", "ga":
				h.unit = cmp.Or(h.unit, gauge)
			case "mm2":
				h.unit = plain
			}
		}
		return h, true
	}
	return head{}, false
}

// gauge is the unit of a header that says gauge, and not which.
const gauge = "gauge"

// withoutUnit parts "length in ft" and "length m" into the words and a unit, if
// they end in one.
func withoutUnit(plain string) (words, unit string) {
	i := strings.LastIndexByte(plain, ' ')
	if i < 0 || !isUnit(plain[i+1:]) {
		return plain, ""
	}
	words = strings.TrimSuffix(plain[:i], " in")
	return strings.TrimSuffix(words, " en"), plain[i+1:]
}

// isUnit reports whether a text is a unit that a column can have.
func isUnit(text string) bool {
	_, measured := quantity.DimensionOf(text)
	return measured || slices.Contains([]string{"awg", "sae", "mm2", "mm²", "ga", gauge}, strings.ToLower(text))
}

// normal is a header in small letters, words parted by one blank.
func normal(text string) string {
	text = strings.ReplaceAll(strings.ToLower(text), "²", "2")
	return strings.Join(strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }), " ")
}

// ParseColumns reads columns said by hand, such as "A=id,C=from,D=to".
func ParseColumns(text string) (map[int]string, error) {
	said := map[int]string{}
	for _, pair := range strings.Split(text, ",") {
		letter, name, ok := strings.Cut(pair, "=")
		i, known := letterIndex(strings.TrimSpace(letter))
		h, good := readHead(strings.TrimSpace(name))
		if !ok || !known || !good {
			return nil, fmt.Errorf("%q says no column; write a letter and a name, such as C=from; the names are %s", pair, strings.Join(Names(), ", "))
		}
		said[i] = h.name
	}
	return said, nil
}

// letterIndex counts the letters of a column from 0: A, B, ..., Z, AA.
func letterIndex(letters string) (int, bool) {
	n := 0
	for _, r := range strings.ToUpper(letters) {
		if r < 'A' || r > 'Z' || n > 1000 {
			return 0, false
		}
		n = n*26 + int(r-'A') + 1
	}
	return n - 1, n > 0
}

// cell names a cell as spreadsheets do; row and column count from 0.
func cell(row, col int) string {
	letters := ""
	for n := col + 1; n > 0; n = (n - 1) / 26 {
		letters = string(rune('A'+(n-1)%26)) + letters
	}
	return fmt.Sprintf("%s%d", letters, row+1)
}
