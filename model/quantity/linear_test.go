package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// 10 AWG solid copper: 0.9988 ohm per 1000 ft is 3.277 ohm per km (ASTM B258 with
// 1/58 ohm mm2/m, by hand); 1 ft = 0.3048 m, NIST SP 811 (2008) B.8.
func TestResistancePerLength(t *testing.T) {
	q := New(0.9988, "ohm/kft")
	assert.InDelta(t, 3.277, q.Base, 0.0005)
	assert.Equal(t, "3.28 Ω/km (0.999 Ω/1000 ft)", q.Format(Both))
	parsed, err := Parse("3.277 ohm/km", LinearResistance)
	assert.NoError(t, err)
	assert.Equal(t, "3.28 Ω/km", parsed.Format(Metric))
}
