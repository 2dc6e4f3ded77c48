package reports

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"
	"unicode"

	"driploop/model/circuit"
	"driploop/model/quantity"
	"driploop/model/record"
)

// ScheduleCSV writes one table of the schedule as comma-separated values (RFC
// 4180), with units in the head and figures that cannot be computed as "open".
func ScheduleCSV(w io.Writer, r *record.Record, a *circuit.Analysis, table string, o Options) error {
	if o.Units == "" {
		o.Units = quantity.Metric
	}
	s := (&worksheets{rec: r, a: a, units: o.Units}).table(table)
	out := csv.NewWriter(w)
	line := make([]string, len(s.heads))
	for i, h := range s.heads {
		line[i] = h.label(func(unit string) string { return unit })
	}
	if err := out.Write(line); err != nil {
		return err
	}
	for _, row := range s.rows {
		for i, c := range row {
			line[i] = c.csv()
		}
		if err := out.Write(line); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

func (c cell) csv() string {
	if c.is {
		return strconv.FormatFloat(c.number, 'f', -1, 64)
	}
	return unformulated(c.text)
}

// unformulated keeps spreadsheets from taking a text for a formula: what begins
// as one gets the mark of text before it.
func unformulated(s string) string {
	if first := strings.TrimLeftFunc(s, unicode.IsSpace); first != "" && strings.ContainsRune("=+-@＝＋－＠", []rune(first)[0]) {
		return "'" + s
	}
	return s
}
