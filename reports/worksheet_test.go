package reports_test

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"io"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"driploop/model/circuit"
	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/reports"
)

func asCSV(t *testing.T, r *record.Record, a *circuit.Analysis, table string, o reports.Options) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, reports.ScheduleCSV(&b, r, a, table, o))
	return b.Bytes()
}

func asXLSX(t *testing.T, r *record.Record, a *circuit.Analysis, o reports.Options) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, reports.ScheduleXLSX(&b, r, a, o))
	return b.Bytes()
}

func pump(t *testing.T) *record.Record {
	t.Helper()
	r, faults := record.Decode("yard/pump.yaml", []byte(pumpText))
	require.Empty(t, faults)
	return r
}

func TestScheduleTablesGolden(t *testing.T) {
	for _, table := range reports.Tables() {
		for _, units := range []quantity.System{"", quantity.US, quantity.Both} {
			name := strings.TrimSuffix("pump-"+table+"-"+string(units), "-") + ".csv"
			golden(t, "csv", name, asCSV(t, pump(t), pumpAnalysis(), table, reports.Options{Units: units}))
		}
	}
}

func TestLabelsHaveARowForEachEnd(t *testing.T) {
	rows, err := csv.NewReader(bytes.NewReader(asCSV(t, pump(t), pumpAnalysis(), "labels", reports.Options{}))).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 1+2*3)
	assert.Equal(t, []string{"P1", "from", "house.pos", "", "locker", "pump-fuse.line"}, rows[1][:6])
	assert.Equal(t, []string{"P1", "to", "pump-fuse.line", "", "locker", "house.pos"}, rows[2][:6])
	assert.Equal(t, []string{"P2", "to", "pump.pos", "deck wash", "locker", "pump-fuse.load"}, rows[4][:6])
}

// formulas are texts that spreadsheets take for more than text.
var formulas = []string{
	"=1+1", "+1", "-1", "@SUM(A1)", "=HYPERLINK(\"http://bad.example\",\"x\")", "=cmd|' /C calc'!A0", "\t=1", " =1", "\r=1", "＝1", "'=1",
	"<b>x</b>", "a,\"b\"\nc", "1e5", "007", "TRUE", "2026-06-18", strings.Repeat("long ", 10_000),
}

func labelled(t *testing.T, label string) (*record.Record, *circuit.Analysis) {
	t.Helper()
	r := pump(t)
	r.Component("pump").Label.V = label // the format lets fewer characters in
	return r, circuit.Analyse(r)
}

func TestCSVHoldsNoFormula(t *testing.T) {
	for _, text := range formulas {
		r, a := labelled(t, text)
		for _, table := range reports.Tables() {
			out := asCSV(t, r, a, table, reports.Options{})
			rows, err := csv.NewReader(bytes.NewReader(out)).ReadAll()
			require.NoError(t, err)
			for _, row := range rows {
				for _, cell := range row {
					if _, err := strconv.ParseFloat(cell, 64); err != nil {
						assert.NotRegexp(t, `^\s*[=+\-@＝＋－＠]`, cell)
					}
				}
			}
		}
		circuits := string(asCSV(t, r, a, "circuits", reports.Options{}))
		if strings.ContainsAny(text, "=+-@") && text != "'=1" && text != "2026-06-18" && !strings.ContainsAny(text, "\t\r") {
			assert.Contains(t, strings.ReplaceAll(circuits, `""`, `"`), "'"+text)
		}
	}
}

func TestWorkbookHoldsTextsAsTextAndNumbersAsNumbers(t *testing.T) {
	for _, text := range formulas {
		r, a := labelled(t, text)
		book, err := excelize.OpenReader(bytes.NewReader(asXLSX(t, r, a, reports.Options{Units: quantity.Metric})))
		require.NoError(t, err)
		assert.Equal(t, append(reports.Tables(), "about"), book.GetSheetList())
		for _, sheet := range book.GetSheetList() {
			rows, err := book.GetRows(sheet)
			require.NoError(t, err)
			for y, row := range rows {
				for x := range row {
					at, err := excelize.CoordinatesToCellName(x+1, y+1)
					require.NoError(t, err)
					formula, err := book.GetCellFormula(sheet, at)
					require.NoError(t, err)
					assert.Empty(t, formula)
				}
			}
		}
		label, err := book.GetCellValue("circuits", "B2")
		require.NoError(t, err)
		want := reports.Plain(text)
		if len(want) > excelize.TotalCellChars {
			want = want[:excelize.TotalCellChars-1] + "…"
		}
		assert.Equal(t, want, label)
		kind, err := book.GetCellType("circuits", "B2")
		require.NoError(t, err)
		assert.Equal(t, excelize.CellTypeSharedString, kind)
		current, err := book.GetCellType("circuits", "I2")
		require.NoError(t, err)
		assert.NotEqual(t, excelize.CellTypeSharedString, current)
		require.NoError(t, book.Close())
	}
}

func TestWorkbookSaysWhatTheTablesSay(t *testing.T) {
	r, a := labelled(t, "deck wash")
	for _, units := range []quantity.System{quantity.Metric, quantity.US, quantity.Both} {
		book, err := excelize.OpenReader(bytes.NewReader(asXLSX(t, r, a, reports.Options{Units: units})))
		require.NoError(t, err)
		for _, table := range reports.Tables() {
			want, err := csv.NewReader(bytes.NewReader(asCSV(t, r, a, table, reports.Options{Units: units}))).ReadAll()
			require.NoError(t, err)
			got, err := book.GetRows(table)
			require.NoError(t, err)
			require.Len(t, got, len(want), table)
			for y := 1; y < len(want); y++ {
				for len(got[y]) < len(want[y]) {
					got[y] = append(got[y], "") // rows end at their last value
				}
				assert.Equal(t, want[y], got[y], table)
			}
		}
		require.NoError(t, book.Close())
	}
}

func TestExportsAreTheSameForTheSameRecord(t *testing.T) {
	r, a := labelled(t, "deck wash")
	at := time.Date(2026, 6, 18, 15, 4, 5, 0, time.FixedZone("", 2*60*60))
	first := asXLSX(t, r, a, reports.Options{At: at})
	time.Sleep(2100 * time.Millisecond) // archives keep time to two seconds
	assert.Equal(t, first, asXLSX(t, r, a, reports.Options{At: at}))
	archive, err := zip.NewReader(bytes.NewReader(first), int64(len(first)))
	require.NoError(t, err)
	core, err := archive.Open("docProps/core.xml")
	require.NoError(t, err)
	text, err := io.ReadAll(core)
	require.NoError(t, err)
	assert.Contains(t, string(text), "2026-06-18T13:04:05Z")
	assert.Equal(t, asCSV(t, r, a, "circuits", reports.Options{}), asCSV(t, r, a, "circuits", reports.Options{}))
}

func TestAFullDiskIsReportedByExports(t *testing.T) {
	r, a := labelled(t, "deck wash")
	assert.ErrorContains(t, reports.ScheduleXLSX(fullDisk{}, r, a, reports.Options{}), "no space left")
	assert.ErrorContains(t, reports.ScheduleCSV(fullDisk{}, r, a, "labels", reports.Options{}), "no space left")
}
