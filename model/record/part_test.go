package record

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestPathsAndTheirParts(t *testing.T) {
	assert.Equal(t, "conductors.P1", PartOf("conductors.P1.ends.from"))
	assert.Equal(t, "job", PartOf("job"))
	assert.True(t, Within("conductors.P1", "conductors.P1"))
	assert.True(t, Within("conductors.P1.size", "conductors.P1"))
	assert.True(t, Within("tests[1].at_load", "tests[1]"))
	assert.True(t, Within("conductors.P1.route[0].in", "conductors.P1.route"))
	assert.False(t, Within("conductors.P10.size", "conductors.P1"), "another conductor")
	assert.False(t, Within("conductors", "conductors.P1"))
}
