package quantity_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/quantity"
)

// Conversions by hand with the exact factors of NIST SP 811 (2008) B.8.
func TestParse(t *testing.T) {
	for _, c := range []struct {
		text  string
		dim   quantity.Dimension
		value float64
		unit  string
		base  float64
	}{
		{"24 ft", quantity.Length, 24, "ft", 7315.2},
		{"24ft", quantity.Length, 24, "ft", 7315.2},
		{"  24   ft ", quantity.Length, 24, "ft", 7315.2},
		{"7 in", quantity.Length, 7, "in", 177.8},
		{`7"`, quantity.Length, 7, "in", 177.8},
		{"5/16 in", quantity.Length, 0.3125, "in", 7.9375},
		{"1-1/2 in", quantity.Length, 1.5, "in", 38.1},
		{"1 1/2 in", quantity.Length, 1.5, "in", 38.1},
		{"-1 1/2 in", quantity.Length, -1.5, "in", -38.1},
		{"+3 mm", quantity.Length, 3, "mm", 3},
		{".5 mm", quantity.Length, 0.5, "mm", 0.5},
		{"5. mm", quantity.Length, 5, "mm", 5},
		{"2e3 mm", quantity.Length, 2000, "mm", 2000},
		{"1E-3 m", quantity.Length, 0.001, "m", 1},
		{"50 °C", quantity.Temperature, 50, "degC", 50},
		{"-40 F", quantity.Temperature, -40, "degF", -40},
		{"122 degF", quantity.Temperature, 122, "degF", 50},
		{"-273.15 degC", quantity.Temperature, -273.15, "degC", -273.15},
		{"80 lbf.in", quantity.Torque, 80, "lbf.in", 9.03878632221},
		{"9 N·m", quantity.Torque, 9, "N.m", 9},
		{"9 Nm", quantity.Torque, 9, "N.m", 9},
		{"3 mΩ", quantity.Resistance, 3, "mohm", 3},
		{"20 MΩ", quantity.Resistance, 20, "Mohm", 2e10},
		{"12 cm²", quantity.Area, 12, "cm2", 1200},
		{"3 %", quantity.Ratio, 3, "%", 3},
		{"3%", quantity.Ratio, 3, "%", 3},
		{"2 days", quantity.Duration, 2, "d", 172800},
		{"400 L", quantity.Volume, 400, "L", 0.4},
		{"-5 V", quantity.Voltage, -5, "V", -5},
	} {
		t.Run(c.text, func(t *testing.T) {
			q, err := quantity.Parse(c.text, c.dim)
			require.NoError(t, err)
			assert.Equal(t, quantity.Quantity{Dim: c.dim, Base: c.base, Value: c.value, Unit: c.unit}, q)
		})
	}
}

func TestParseSaysWhatWouldBeRight(t *testing.T) {
	for _, c := range []struct {
		text string
		dim  quantity.Dimension
		says string
	}{
		{"12", quantity.Voltage, `"12" has no unit; a voltage is written in mV or V`},
		{"50", quantity.Temperature, `"50" has no unit; a temperature is written in degF or degC`},
		{"12 V", quantity.Length, `"12 V" is a voltage; a length is wanted here, written in um, mm, cm, in, ft or m`},
		{"24 feets", quantity.Length, `"feets" is no unit known here; a length is written in um, mm, cm, in, ft or m`},
		{"12 v", quantity.Voltage, `"v" is no unit known here; a voltage is written in mV or V`},
		{"long", quantity.Length, `"long" is not a length; write a number and a unit, such as "25 mm"`},
		{"", quantity.Torque, `"" is not a torque; write a number and a unit, such as "9 N.m"`},
		{"1.2.3 V", quantity.Voltage, `"1.2.3" is not a number; write a voltage such as "25 V"`},
		{"1/0 in", quantity.Length, `"1/0" is not a number; write a length such as "25 mm"`},
		{"- V", quantity.Voltage, `"-" is not a number; write a voltage such as "25 V"`},
		{"1e999 V", quantity.Voltage, `"1e999" is not a number; write a voltage such as "25 V"`},
		{"1e308 Mohm", quantity.Resistance, `"1e308 Mohm" is too large`},
		{"0x10 mm", quantity.Length, `"x10 mm" is no unit known here; a length is written in um, mm, cm, in, ft or m`},
		{"1_000 mm", quantity.Length, `"_000 mm" is no unit known here; a length is written in um, mm, cm, in, ft or m`},
		{"1,5 m", quantity.Length, `"1,5 m" has a comma in its number; write a decimal point and no thousands separators`},
		{"NaN V", quantity.Voltage, `"NaN V" is not a voltage; write a number and a unit, such as "25 V"`},
		{"Inf A", quantity.Current, `"Inf A" is not a current; write a number and a unit, such as "25 A"`},
		{"-274 degC", quantity.Temperature, `"-274 degC" is below absolute zero; check its sign and its unit`},
		{"-460 degF", quantity.Temperature, `"-460 degF" is below absolute zero; check its sign and its unit`},
	} {
		t.Run(c.text, func(t *testing.T) {
			_, err := quantity.Parse(c.text, c.dim)
			var parse *quantity.ParseError
			require.ErrorAs(t, err, &parse)
			assert.Equal(t, c.says, parse.Says)
			assert.Equal(t, c.text, parse.Text)
		})
	}
}

func TestParseErrorStaysShort(t *testing.T) {
	_, err := quantity.Parse(strings.Repeat("é", 1_000_000), quantity.Length)
	assert.Less(t, len(err.Error()), 300)
}

// US and metric values at a limit are the same number: 7 in is 177.8 mm, 40 in
// 1.016 m, 72 in 1.8288 m.
func TestEqualValuesAreEqualInAnyUnit(t *testing.T) {
	for _, pair := range [][2]string{{"7 in", "177.8 mm"}, {"40 in", "1.016 m"}, {"72 in", "6 ft"}, {"1828.8 mm", "6 ft"}, {"0.1 m", "100 mm"}} {
		a, err := quantity.Parse(pair[0], quantity.Length)
		require.NoError(t, err)
		b, err := quantity.Parse(pair[1], quantity.Length)
		require.NoError(t, err)
		assert.Equal(t, a.Base, b.Base, "%s and %s", pair[0], pair[1]) //nolint:testifylint // exactly
	}
}

func TestParseWireSize(t *testing.T) {
	for _, c := range []struct {
		text, prints string
		gauge        int
		mm2          float64
	}{
		{"8 AWG", "8 AWG", 8, 0},
		{"8AWG", "8 AWG", 8, 0},
		{"2/0 AWG", "2/0 AWG", -1, 0},
		{"00 AWG", "2/0 AWG", -1, 0},
		{"0 AWG", "1/0 AWG", 0, 0},
		{"4/0 SAE", "4/0 SAE", -3, 0},
		{"40 AWG", "40 AWG", 40, 0},
		{"16 mm2", "16 mm2", 0, 16},
		{"16 mm²", "16 mm2", 0, 16},
		{"0.75 mm2", "0.75 mm2", 0, 0.75},
	} {
		t.Run(c.text, func(t *testing.T) {
			s, err := quantity.ParseWireSize(c.text)
			require.NoError(t, err)
			assert.Equal(t, c.gauge, s.Gauge)
			assert.InDelta(t, c.mm2, s.MM2, 0)
			assert.Equal(t, c.prints, s.String())
		})
	}
}

func TestParseWireSizeSaysWhatWouldBeRight(t *testing.T) {
	const help = `; a conductor size is written like "8 AWG", "2/0 AWG", "8 SAE" or "16 mm2"`
	for text, says := range map[string]string{
		"8":         `"8" has no gauge system` + help,
		"":          `"" has no gauge system` + help,
		"AWG 8":     `"AWG 8" does not begin with a number` + help,
		"41 AWG":    `"41 AWG" is not a gauge from 40 to 4/0` + help,
		"5/0 AWG":   `"5/0 AWG" is not a gauge from 40 to 4/0` + help,
		"0/0 AWG":   `"0/0 AWG" is not a gauge from 40 to 4/0` + help,
		"08 AWG":    `"08 AWG" is not a gauge from 40 to 4/0` + help,
		"1.5 AWG":   `"1.5 AWG" is not a gauge from 40 to 4/0` + help,
		"-8 AWG":    `"-8 AWG" does not begin with a number` + help,
		"8 awg":     `"8 awg" is not in a gauge system known here` + help,
		"16 mm":     `"16 mm" is not in a gauge system known here` + help,
		"0 mm2":     `"0 mm2" is not an area above 0 and up to 1000 mm2` + help,
		"1001 mm2":  `"1001 mm2" is not an area above 0 and up to 1000 mm2` + help,
		"1/2 mm2":   `"1/2 mm2" is not an area above 0 and up to 1000 mm2` + help,
		"0x1p4 mm2": `"0x1p4 mm2" is not in a gauge system known here` + help,
	} {
		t.Run(text, func(t *testing.T) {
			_, err := quantity.ParseWireSize(text)
			require.Error(t, err)
			assert.Equal(t, says, err.Error())
		})
	}
}

func TestPatternFitsWhatParseReads(t *testing.T) {
	for text, dim := range map[string]quantity.Dimension{
		"24 ft": quantity.Length, `7"`: quantity.Length, "1-1/2 in": quantity.Length, "50 °C": quantity.Temperature,
		"80 lbf.in": quantity.Torque, "9 N·m": quantity.Torque, "3 mΩ": quantity.Resistance, "12 cm²": quantity.Area, "3%": quantity.Ratio,
		"2 hours": quantity.Duration, "5 µm": quantity.Length,
	} {
		assert.Regexp(t, regexp.MustCompile(quantity.Pattern(dim, true)), text)
		_, err := quantity.Parse(text, dim)
		assert.NoError(t, err)
	}
	for _, text := range []string{"12", "12 V", "x", "1,5 m", "12 m2", "3 ftm", "-3 mm"} {
		assert.NotRegexp(t, regexp.MustCompile(quantity.Pattern(quantity.Length, false)), text)
	}
}

func TestUnitsAreListedSmallestFirst(t *testing.T) {
	assert.Equal(t, []string{"um", "mm", "cm", "in", "ft", "m"}, quantity.Units(quantity.Length))
	assert.Equal(t, []string{"lbf.in", "N.m", "lbf.ft"}, quantity.Units(quantity.Torque))
}
