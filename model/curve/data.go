package curve

import (
	_ "embed"
	"encoding/csv"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
)

//go:embed data/gates.csv
var gatesFile string

// Families lists the families that gates are held for, as a record names them.
func Families() []string {
	return []string{"blade-c", "blade-e", "mini", "bolt-in", "cartridge", "thermal", "thermal-magnetic"}
}

// sources names the document that the gates of a family come from; the trust
// stands with each gate.
var sources = map[string]string{
	"blade-c":          "SAE J1284 and ISO 8820-3 type C by makers' sheets",
	"blade-e":          "SAE J1888 and ISO 8820-3:2002 type E by makers' sheets",
	"mini":             "SAE J2077 and ISO 8820-3 type F, taken as type C",
	"bolt-in":          "ISO 8820-5, strip and bolt-in fuses",
	"cartridge":        "UL 248-14 miniature fuse by makers' sheets",
	"thermal":          "typical calibration by UL 489",
	"thermal-magnetic": "typical calibration by UL 489, instantaneous release by common practice",
}

type gateRow struct {
	family string
	toA    float64
	gate   Gate
}

// gateRows reads the embedded table. A fault in it is a fault of the program,
// and the tests read all of it.
var gateRows = sync.OnceValue(func() []gateRow {
	reader := csv.NewReader(strings.NewReader(gatesFile))
	reader.Comment = '#'
	lines, err := reader.ReadAll()
	if err != nil {
		panic(err)
	}
	var rows []gateRow
	for _, line := range lines[1:] {
		rows = append(rows, gateRow{
			family: line[0],
			toA:    number(line[1], math.Inf(1)),
			gate: Gate{
				Multiple:  number(line[2], 0) / 100,
				LeastS:    number(line[3], 0),
				GreatestS: number(line[4], math.Inf(1)),
				Release:   Release(line[5]),
				Trust:     line[6],
			},
		})
	}
	slices.SortStableFunc(rows, func(a, b gateRow) int {
		switch {
		case a.toA < b.toA:
			return -1
		case a.toA > b.toA:
			return 1
		}
		return 0
	})
	return rows
})

func number(text string, empty float64) float64 {
	if text == "" {
		return empty
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("curve: " + err.Error())
	}
	return v
}
