package quantity_test

import (
	"math"
	"regexp"
	"testing"

	"driploop/model/quantity"
)

func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		"24 ft", "150 mm", "35 A", "50 degC", "122 °F", "9 N.m", "80 lbf.in", "1-1/2 in", "5/16 in", "-273.15 degC", "1e308 Mohm", "1e999 V",
		"0x10 mm", "1_0 m", "NaN V", "", " ", "-", "1/0 in", "3%", "µm", "5 \xff", "1e5", "1e V", "..5 V", "+ 5 V", "1,5 m", "2/0 AWG", "16 mm²", "00 AWG",
	} {
		f.Add(seed, uint8(quantity.Length))
		f.Add(seed, uint8(quantity.Voltage))
		f.Add(seed, uint8(quantity.Temperature))
	}
	patterns := map[quantity.Dimension]*regexp.Regexp{}
	for _, d := range dimensions() {
		patterns[d] = regexp.MustCompile(quantity.Pattern(d, true))
	}
	f.Fuzz(func(t *testing.T, text string, pick uint8) {
		all := dimensions()
		d := all[int(pick)%len(all)]
		q, err := quantity.Parse(text, d)
		if err == nil {
			if q.Dim != d || math.IsNaN(q.Base) || math.IsInf(q.Base, 0) {
				t.Fatalf("%q became %+v", text, q)
			}
			if !patterns[d].MatchString(text) {
				t.Fatalf("%q is read as a %s and the pattern does not fit it", text, d)
			}
			if _, known := quantity.DimensionOf(q.Unit); !known {
				t.Fatalf("%q has the unit %q", text, q.Unit)
			}
		}
		if size, err := quantity.ParseWireSize(text); err == nil {
			again, err := quantity.ParseWireSize(size.String())
			if err != nil || again != size {
				t.Fatalf("%q is %v, and printed %v", text, size, again)
			}
			if !regexp.MustCompile(quantity.WirePattern).MatchString(text) {
				t.Fatalf("%q is a size and the pattern does not fit it", text)
			}
		}
	})
}
