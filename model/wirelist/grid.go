package wirelist

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"
	"golang.org/x/text/encoding/charmap"
)

// Bounds of a list: a boat of 400 conductors has some 50 KB.
const (
	MaxBytes    = 16 << 20
	maxUnzipped = 64 << 20
	maxRows     = 20_000
)

// Grid is the text of a sheet, row by row.
type Grid struct {
	Rows  [][]string
	Notes []string // what about the file as a whole a reader should know
}

// ReadGrid reads a file of comma-separated values or a workbook; the name tells
// which.
func ReadGrid(name string, text []byte) (*Grid, error) {
	if len(text) > MaxBytes {
		return nil, fmt.Errorf("%s has %d bytes; a wire list has at most %d", name, len(text), MaxBytes)
	}
	var g *Grid
	var err error
	switch ext := strings.ToLower(filepath.Ext(name)); ext {
	case ".xlsx", ".xlsm":
		g, err = readWorkbook(text)
	case ".csv", ".tsv", ".txt":
		g, err = readSeparated(text)
	default:
		return nil, fmt.Errorf("%s is no wire list that can be read; save it as .xlsx or .csv", name)
	}
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if len(g.Rows) > maxRows {
		return nil, fmt.Errorf("%s has %d rows; a wire list has at most %d", name, len(g.Rows), maxRows)
	}
	return g, nil
}

// readSeparated reads values parted by commas, semicolons or tabs.
func readSeparated(text []byte) (*Grid, error) {
	g := &Grid{}
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	if !utf8.Valid(text) {
		decoded, err := charmap.Windows1252.NewDecoder().Bytes(text)
		if err != nil {
			return nil, errors.New("the file is not text")
		}
		text = decoded
		g.Notes = append(g.Notes, "the file is not UTF-8; it was read as Windows-1252: look at accented letters")
	}
	separator := separatorOf(text)
	r := csv.NewReader(bytes.NewReader(text))
	r.Comma, r.FieldsPerRecord, r.LazyQuotes = separator, -1, true
	line := 0
	for {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			return g, nil
		}
		if err != nil {
			return nil, err
		}
		// Empty lines are passed over by the reader; rows keep their numbers.
		if at, _ := r.FieldPos(0); at > line+1 && len(g.Rows) < maxRows {
			for ; line+1 < at; line++ {
				g.Rows = append(g.Rows, nil)
			}
		}
		line = len(g.Rows) + 1
		g.Rows = append(g.Rows, row)
	}
}

// separatorOf is what parts the values: of the characters that do in some list, the
// one of which most of the first rows have most. A title above the list has none.
func separatorOf(text []byte) rune {
	const looked = 20 // rows
	best, most := ',', 0
	for _, s := range []rune{',', ';', '\t', '|'} {
		count := 0
		for i, line := range bytes.SplitN(text, []byte("\n"), looked+1) {
			if i < looked {
				count += bytes.Count(line, []byte(string(s)))
			}
		}
		if count > most {
			best, most = s, count
		}
	}
	return best
}

// readWorkbook reads the sheet that holds a wire list.
func readWorkbook(text []byte) (*Grid, error) {
	book, err := excelize.OpenReader(bytes.NewReader(text), excelize.Options{UnzipSizeLimit: maxUnzipped, UnzipXMLSizeLimit: maxUnzipped})
	if err != nil {
		return nil, errors.New("no workbook that can be read; save it as .xlsx or .csv")
	}
	defer book.Close()
	g := &Grid{}
	for _, sheet := range book.GetSheetList() {
		rows, err := book.GetRows(sheet)
		if err != nil {
			g.Notes = append(g.Notes, fmt.Sprintf("sheet %q cannot be read", sheet))
			continue
		}
		_, _, ok := findHead(rows)
		switch {
		case ok && g.Rows == nil:
			g.Rows = rows
		case len(rows) > 0:
			g.Notes = append(g.Notes, fmt.Sprintf("sheet %q was not read: the list is taken from one sheet", sheet))
		}
		if g.Rows == nil && sheet == book.GetSheetList()[0] {
			defer func() {
				if g.Rows == nil {
					g.Rows = rows
				}
			}()
		}
	}
	return g, nil
}

// maxTitle is how many rows may stand above the header.
const maxTitle = 30

// findHead finds the row that names the columns: the first that names from and
// to.
func findHead(rows [][]string) (int, map[int]head, bool) {
	for i := 0; i < len(rows) && i < maxTitle; i++ {
		heads, has := map[int]head{}, map[string]bool{}
		for j, text := range rows[i] {
			if h, ok := readHead(text); ok {
				heads[j], has[h.name] = h, true
			}
		}
		if has[colFrom] && has[colTo] {
			return i, heads, true
		}
	}
	return 0, nil, false
}
