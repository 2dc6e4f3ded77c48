package wirelist

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
	"pgregory.net/rapid"

	"driploop/model/record"
)

func imported(t *testing.T, name, text string, o Options) (*record.Record, *Imported) {
	t.Helper()
	g, err := ReadGrid(name, []byte(text))
	require.NoError(t, err)
	if o.System == "" {
		o.System = "12 V"
	}
	got, err := Import(name, g, o)
	require.NoError(t, err)
	r, faults := record.Decode(name, got.Text)
	require.Empty(t, faults, string(got.Text))
	return r, got
}

// TestImportOfWhatYardsWrite reads how sizes, lengths, colours and names are written
// by hand.
func TestImportOfWhatYardsWrite(t *testing.T) {
	r, got := imported(t, "list.csv", "Wire list of the port side\n"+
		"Wire No.,From,To,Gauge,Colour,Length (ft),Fuse (A),Remarks\n"+
		"1,Batt +,Main Sw.,2/0,Red,3'6\",,\n"+
		"2,Panel bus / Brk 4,Nav lights,14,Dk Blue,\"22,5\",10,\n"+
		"3,Nav lights,Neg bus,#14,YEL,18 ft 6 in,,\n"+
		"4,Panel bus,Bilge pump,12 ga,brn/wht,\"1,500\",15A,auto float\n", Options{})
	require.Len(t, r.Conductors, 4)
	for id, want := range map[string][4]string{
		"1": {"2/0 AWG", "red", "42 in", "main-sw.in"},
		"2": {"14 AWG", "dark-blue", "22.5 ft", "nav-lights.pos"},
		"3": {"14 AWG", "yellow", "222 in", "neg-bus.t1"},
		"4": {"12 AWG", "brown/white", "", "bilge-pump.pos"},
	} {
		c := r.Conductor(id)
		length := ""
		if c.Length.Is() {
			length = c.Length.V.String()
		}
		assert.Equal(t, want, [4]string{c.Size.V.String(), c.Colour.V, length, c.To.String()}, id)
	}
	assert.Equal(t, "switch", r.Component("main-sw").Kind.V)
	assert.Equal(t, "breaker", r.Component("panel-bus-brk-4").Kind.V)
	assert.Equal(t, "negative", r.Conductor("3").Role.V, "it lands on the negative bus")
	notes := strings.Join(got.Notes, "\n")
	for _, says := range []string{
		`D4: size "14" is taken as 14 AWG: look`, `F6: length "1,500" was not understood; a comma before three digits`,
		`row 5: taken as negative, since it lands on "Neg bus"`,
	} {
		assert.Contains(t, notes, says)
	}
}

// TestHeadersOfOtherLanguages reads a list as a yard on the Continent keeps it: a
// mark of byte order, semicolons, decimal commas, units in the header.
func TestHeadersOfOtherLanguages(t *testing.T) {
	r, _ := imported(t, "list.csv", "\ufeffLeitung;von;nach;Querschnitt mm²;Farbe;Länge m\n1;Batterie +;Minus;35;sw;1,5\n", Options{})
	one := r.Conductor("1")
	assert.Equal(t, "35 mm2", one.Size.V.String())
	assert.Equal(t, "black", one.Colour.V)
	assert.Equal(t, "1.5 m", one.Length.V.String())
	r, _ = imported(t, "list.txt", "fil|de|vers|section en mm2|couleur|longueur (cm)\n1|Batterie +|Fuse|16|rouge|80\n", Options{})
	assert.Equal(t, "80 cm", r.Conductor("1").Length.V.String())
	assert.Equal(t, "red", r.Conductor("1").Colour.V)
}

const ugly = `Saltmarsh Boatworks;wire list;;;;;;
;;;;;;;
Wire No.;Colour;From;To;AWG;Length (ft);Remarks;Function
1;Red;Battery +;Main fuse;2/0;1,5;cut long;+
2;red;Main fuse;Battery switch;2/0;2;;positive
;RED / white;Battery switch;Bilge pump;#14;24;see drawing;Feed
3;black;Bilge pump -;Neg. bus:4;14;twenty;;-
3;Yellow;Neg. bus:5;Battery -;2/0;3 m;;return
;;;;;;note on its own;
4;green;Pump case;;8;;;bond
5;plaid;Nav station;Widget;99;-3;;mystery
`

func TestImportOfAnUglyList(t *testing.T) {
	r, got := imported(t, "ugly.csv", ugly, Options{Number: "HL-1"})
	require.Len(t, r.Conductors, 6)
	one := r.Conductor("1")
	assert.Equal(t, "battery.pos", one.From.String())
	assert.Equal(t, "main-fuse.line", one.To.String())
	assert.Equal(t, "2/0 AWG", one.Size.V.String())
	assert.InDelta(t, 1.5*304.8, one.Length.V.In("mm"), 1e-9, "a decimal comma, the unit of the header")
	assert.Equal(t, "positive", one.Role.V)
	assert.Equal(t, "red/white", r.Conductor("W6").Colour.V)
	assert.Equal(t, "14 AWG", r.Conductor("W6").Size.V.String())
	assert.Equal(t, "neg-bus.4", r.Conductor("3").To.String())
	assert.Equal(t, "negative", r.Conductor("3").Role.V)
	assert.False(t, r.Conductor("3").Length.Is(), "twenty")
	assert.InDelta(t, 3000, r.Conductor("3-2").Length.V.In("mm"), 1e-9, "the unit of the cell goes before that of the header")
	assert.Equal(t, "busbar", r.Component("widget").Kind.V)
	assert.False(t, r.Conductor("5").Size.Is())
	assert.False(t, r.Conductor("5").Length.Is())
	assert.False(t, r.Conductor("5").Colour.Is(), "plaid is no colour of a record")

	notes := strings.Join(got.Notes, "\n")
	for _, says := range []string{
		`G3: column "Remarks" is none that a record has`,
		`row 6: no id; it is called W6`,
		`F7: length "twenty" was not understood; write it with its unit`,
		`row 8: 3 is here twice; this one is called 3-2`,
		`row 9: it does not say both ends`,
		`row 10: it does not say both ends`,
		`E11: size "99" was not understood`,
		`F11: length "-3" was not understood`,
		`B11: colour "plaid" was not understood`,
		`H11: role "mystery" was not understood`,
		`D11: what "Widget" is was not understood`,
	} {
		assert.Contains(t, notes, says)
	}
	// Nothing is dropped: every cell that is no part of a conductor stands in a comment.
	for _, kept := range []string{"Saltmarsh Boatworks", "wire list", "cut long", "see drawing", "twenty", "note on its own", "Pump case", "plaid", "mystery"} {
		assert.Contains(t, string(got.Text), kept)
	}
}

func TestColumnsSaidByHand(t *testing.T) {
	_, err := ParseColumns("A=wire,B=nonsense")
	require.ErrorContains(t, err, `"B=nonsense" says no column`)
	said, err := ParseColumns("B=id, C=from,D=to,A=size")
	require.NoError(t, err)
	r, _ := imported(t, "bare.csv", "10 AWG,P1,house.pos,fuse.line\n10 AWG,P2,fuse.load,lamp.pos\n", Options{Columns: said})
	require.Len(t, r.Conductors, 2)
	assert.Equal(t, "fuse.load", r.Conductor("P2").From.String())
	assert.Equal(t, "10 AWG", r.Conductor("P1").Size.V.String())
}

func TestWhatIsNoWireListIsRefused(t *testing.T) {
	for name, says := range map[string]string{
		"a.doc":  "save it as .xlsx or .csv",
		"b.xlsx": "no workbook that can be read",
	} {
		_, err := ReadGrid(name, []byte("hello"))
		require.ErrorContains(t, err, says)
	}
	g, err := ReadGrid("c.csv", []byte("a,b\n1,2\n"))
	require.NoError(t, err)
	_, err = Import("c.csv", g, Options{System: "12 V"})
	require.ErrorContains(t, err, `no row names the columns "from" and "to"`)
	g, err = ReadGrid("d.csv", []byte("from,to\n"))
	require.NoError(t, err)
	_, err = Import("d.csv", g, Options{System: "12 V"})
	require.ErrorContains(t, err, "no row with both ends")
}

func TestWorkbook(t *testing.T) {
	book := excelize.NewFile()
	require.NoError(t, book.SetSheetName("Sheet1", "Cover"))
	require.NoError(t, book.SetSheetRow("Cover", "A1", &[]any{"Electrical", "2026"}))
	_, err := book.NewSheet("Wires")
	require.NoError(t, err)
	require.NoError(t, book.SetSheetRow("Wires", "A2", &[]any{"Id", "From", "To", "Size mm2", "Cross-section (mm²)", "Length [m]"}))
	require.NoError(t, book.SetSheetRow("Wires", "A3", &[]any{"P1", "House battery +", "Fuse", "", 16, 0.25}))
	var out bytes.Buffer
	require.NoError(t, book.Write(&out))
	r, got := imported(t, "list.xlsx", out.String(), Options{})
	assert.Equal(t, "16 mm2", r.Conductor("P1").Size.V.String())
	assert.InDelta(t, 250, r.Conductor("P1").Length.V.In("mm"), 1e-9)
	assert.Contains(t, strings.Join(got.Notes, "\n"), `sheet "Cover" was not read`)
}

// TestThereAndBack: what a wire list can hold of the demo records comes back as
// it was.
func TestThereAndBack(t *testing.T) {
	files, err := filepath.Glob("../../testdata/records/*/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		before, faults := record.Decode(file, text)
		require.Empty(t, faults)
		var list bytes.Buffer
		w := csv.NewWriter(&list)
		require.NoError(t, w.WriteAll(Export(before)))
		after, got := imported(t, "list.csv", list.String(), Options{})
		assert.Empty(t, got.Notes, file)
		require.Len(t, after.Conductors, len(before.Conductors))
		for _, b := range before.Conductors {
			a := after.Conductor(b.ID)
			require.NotNil(t, a, "%s: %s", file, b.ID)
			assert.Equal(t, [2]string{b.From.String(), b.To.String()}, [2]string{a.From.String(), a.To.String()})
			assert.Equal(t, [4]string{b.Role.V, b.Colour.V, b.Sheath.V, b.Class.V}, [4]string{a.Role.V, a.Colour.V, a.Sheath.V, a.Class.V}, "%s: %s", file, b.ID)
			assert.Equal(t, [2]string{b.Size.V.String(), b.Standard.V}, [2]string{a.Size.V.String(), a.Standard.V})
			assert.InDelta(t, b.Length.V.Base, a.Length.V.Base, 1e-9)
			assert.InDelta(t, b.Diameter.V.Base, a.Diameter.V.Base, 1e-9)
			assert.InDelta(t, b.Insulation.V.Base, a.Insulation.V.Base, 1e-9)
			assert.Equal(t, before.Component(b.From.Component).Kind.V, after.Component(b.From.Component).Kind.V)
		}
	}
}

// TestNothingOfAListIsLost imports lists of any cells: the record can be read,
// and every cell is in it or in a note.
func TestNothingOfAListIsLost(t *testing.T) {
	word := rapid.SampledFrom([]string{"", "P1", "battery +", "fuse", "Bus 3", "ÄÖ", "= 1+1", "a: b", "# x", "\"q\"", "*x", "{", "10", "8 AWG", "2,5", "line\nbreak", "none", "unknown", "-"})
	rapid.Check(t, func(t *rapid.T) {
		rows := [][]string{{"id", "from", "to", "size", "colour", "length (m)", "remarks"}}
		for i, n := 0, rapid.IntRange(1, 5).Draw(t, "rows"); i < n; i++ {
			row := make([]string, len(rows[0]))
			for j := range row {
				row[j] = word.Draw(t, "cell")
			}
			rows = append(rows, row)
		}
		got, err := Import("x.csv", &Grid{Rows: rows}, Options{System: "12 V"})
		if err != nil {
			if strings.Contains(err.Error(), "cannot be made a record") {
				t.Fatalf("%v: %q", err, rows)
			}
			return
		}
		all := string(got.Text) + strings.Join(got.Notes, "\n")
		for _, row := range rows[1:] {
			for _, column := range []int{3, 4, 5, 6} {
				if text := strings.Replace(oneLine(row[column]), "2,5", "2.5", 1); text != "" && !strings.Contains(strings.ReplaceAll(strings.ToLower(all), "2,5", "2.5"), strings.ToLower(strings.Trim(text, `"`))) {
					t.Fatalf("%q is lost:\n%s", text, all)
				}
			}
		}
	})
}
