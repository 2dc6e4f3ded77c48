package copper

import (
	"embed"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// The printed tables. Each file names its source, the unit of each column and
// what it is valid for; a value between two rows or beyond them does not exist.
//
//go:embed data/*.csv
var files embed.FS

// table is a printed table: a head, and rows by the number in their first cell.
type table struct {
	head []string
	rows map[float64][]float64 // the cells after the first
	keys []float64             // in the order printed
}

// load reads an embedded table. A fault in one is a fault of the program, and
// the tests read all of them.
func load(name string) table {
	file, err := files.Open("data/" + name)
	if err != nil {
		panic(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.Comment = '#'
	cells, err := reader.ReadAll()
	if err != nil {
		panic(fmt.Sprintf("copper: %s: %v", name, err))
	}
	t := table{head: cells[0][1:], rows: make(map[float64][]float64, len(cells)-1)}
	for _, line := range cells[1:] {
		key := cell(name, line[0])
		row := make([]float64, 0, len(line)-1)
		for _, text := range line[1:] {
			row = append(row, cell(name, text))
		}
		t.rows[key] = row
		t.keys = append(t.keys, key)
	}
	return t
}

// cell reads a number, or a gauge written with noughts (00 is -1), or an empty
// cell, which is no value.
func cell(name, text string) float64 {
	if text == "" {
		return math.NaN()
	}
	if strings.Trim(text, "0") == "" && len(text) > 1 {
		return float64(1 - len(text))
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(fmt.Sprintf("copper: %s: %v", name, err))
	}
	return v
}

// column returns the place of a named column after the first.
func (t table) column(name string) int {
	for i, head := range t.head {
		if head == name {
			return i
		}
	}
	panic("copper: no column " + name)
}

// NoValue tells that a source gives no value, and why. A neighbouring value is
// never used in its place.
type NoValue struct {
	Source string // the table or relation asked
	Why    string // such as "Table 5 lists no 7 AWG"
}

func (e *NoValue) Error() string { return e.Why }

func noValue(source, format string, args ...any) *NoValue {
	return &NoValue{Source: source, Why: fmt.Sprintf(format, args...)}
}
