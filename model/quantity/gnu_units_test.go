package quantity_test

import (
	"bytes"
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/quantity"
)

// gnu names our units as GNU units does.
func gnu(symbol string) string {
	names := map[string]string{
		"um": "micrometer", "mm2": "mm^2", "cm2": "cm^2", "m2": "m^2", "in2": "in^2", "m3": "m^3", "L": "litre", "ft3": "ft^3",
		"uohm": "microohm", "mohm": "milliohm", "kohm": "kiloohm", "Mohm": "megaohm", "mAh": "milliampere hour", "Ah": "ampere hour",
		"Wh": "watt hour", "kWh": "kilowatt hour", "h": "hour", "d": "day", "lb": "pound", "lbf": "pound force",
		"N.m": "newton meter", "lbf.in": "pound force inch", "lbf.ft": "pound force foot", "m3/h": "m^3/hour", "L/s": "litre/s",
		"ft3/min": "ft^3/min", "deg": "degree", "%": "percent", "uT": "microtesla", "A2s": "ampere^2 second",
		"g": "gram", "A": "ampere", "mA": "milliampere", "kA": "kiloampere", "V": "volt", "mV": "millivolt", "W": "watt", "kW": "kilowatt",
		"ohm/kft": "ohm/(1000 ft)",
	}
	if name, ok := names[symbol]; ok {
		return name
	}
	return symbol
}

// Every conversion of every unit, against GNU units (version 2.22 was used). In
// CI the program has to be there; elsewhere its absence skips the test.
func TestConversionsAgreeWithGNUUnits(t *testing.T) {
	if _, err := exec.LookPath("units"); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("GNU units is missing: apt-get install units")
		}
		t.Skip("GNU units is not installed")
	}
	values := []float64{1, 0.37, 61.5, 1234.5}
	type row struct {
		have, want string
		ours       float64
	}
	var rows []row
	for _, d := range dimensions() {
		for _, from := range quantity.Units(d) {
			for _, to := range quantity.Units(d) {
				for _, v := range values {
					have, want := strconv.FormatFloat(v, 'f', -1, 64)+" "+gnu(from), gnu(to)
					if d == quantity.Temperature {
						have, want = "temp"+from[3:]+"("+strconv.FormatFloat(v, 'f', -1, 64)+")", "temp"+to[3:]
					}
					rows = append(rows, row{have, want, quantity.New(v, from).In(to)})
				}
			}
		}
	}
	var ask bytes.Buffer
	for _, r := range rows {
		ask.WriteString(r.have + "\n" + r.want + "\n")
	}
	cmd := exec.Command("units", "--terse", "--output-format", "%.15g")
	cmd.Stdin = &ask
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, string(out))
	answers := strings.Split(strings.TrimSpace(string(out)), "\n")
	require.Len(t, answers, len(rows), "one answer for each question")
	for i, r := range rows {
		theirs, err := strconv.ParseFloat(strings.TrimSpace(answers[i]), 64)
		require.NoError(t, err, "%s in %s: %s", r.have, r.want, answers[i])
		// We round to 12 digits, once into the base unit and once out of it.
		assert.InDelta(t, theirs, r.ours, 1.1e-11*math.Abs(theirs)+temperatureSlack(r.want), "%s in %s", r.have, r.want)
	}
	t.Logf("%d conversions agree", len(rows))
}

// temperatureSlack allows for the rounding of a sum with the offset of a scale.
func temperatureSlack(unit string) float64 {
	if strings.HasPrefix(unit, "temp") {
		return 1e-9
	}
	return 0
}
