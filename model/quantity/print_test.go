package quantity_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"driploop/model/quantity"
)

// The conversions are those of NIST SP 811 (2008) appendix B.8.
func TestFormatInTheUnitsOfTheReader(t *testing.T) {
	for _, c := range []struct {
		value            float64
		unit             string
		metric, us, both string
	}{
		{7, "in", "178 mm", "7 in", "178 mm (7 in)"},
		{40, "in", "1.02 m", "40 in", "1.02 m (40 in)"},
		{72, "in", "1.83 m", "6 ft", "1.83 m (6 ft)"},
		{18, "in", "457 mm", "18 in", "457 mm (18 in)"},
		{30, "in", "762 mm", "30 in", "762 mm (30 in)"},
		{2.4, "m", "2.4 m", "7.87 ft", "2.4 m (7.87 ft)"},
		{24.5, "ft", "7.47 m", "24.5 ft", "7.47 m (24.5 ft)"},
		{0, "mm", "0 mm", "0 in", "0 mm (0 in)"},
		{50, "degC", "50 °C", "122 °F", "50 °C (122 °F)"},
		{0.4, "V", "400 mV", "400 mV", "400 mV"},
		{2500, "A", "2.5 kA", "2.5 kA", "2.5 kA"},
		{5.25, "%", "5.25%", "5.25%", "5.25%"},
	} {
		q := quantity.New(c.value, c.unit)
		assert.Equal(t, c.metric, q.Format(quantity.Metric))
		assert.Equal(t, c.us, q.Format(quantity.US))
		assert.Equal(t, c.both, q.Format(quantity.Both))
	}
}

func TestFormatToMoreDigits(t *testing.T) {
	assert.Equal(t, "1.016 m", quantity.New(40, "in").FormatTo(quantity.Metric, 6))
	assert.Equal(t, "1.02 m", quantity.New(40, "in").FormatTo(quantity.Metric, 3))
}

func TestStringIsAsWritten(t *testing.T) {
	assert.Equal(t, "10.755 ft", quantity.New(10.755, "ft").String())
	assert.Equal(t, "133.25", quantity.Quantity{Value: 133.25}.String())
}
