package record

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestDescribe(t *testing.T) {
	kinds := func(id string) string { return map[string]string{"house": "battery", "helm": "switch"}[id] }
	for path, says := range map[string]string{
		"job.number":                       "Number of the job in the yard's books.",
		"conductors.P1.route[2].support":   "Largest distance between supports.",
		"conductors.P1.ends.from.torque":   "Torque that it was tightened to.",
		"components.house.cranking":        "Cold-cranking current of the bank.",
		"components.house.posts.pos.cover": "What covers it.",
		"components.helm.links[0].when":    "Position or command in which it is closed; left out: always.",
		"components.other.cranking":        "Cold-cranking current of the bank.",
	} {
		f, ok := Describe(path, kinds)
		require.True(t, ok, path)
		assert.Equal(t, says, f.Says, path)
		assert.Equal(t, path[strings.LastIndexByte(path, '.')+1:], f.Key)
	}
	for _, path := range []string{"", "x", "components.helm.cranking", "job.number.x", "conductors.P1.route.x", "conductors.P1.ends.beside.torque", "tests[0]"} {
		_, ok := Describe(path, kinds)
		assert.False(t, ok, path)
	}
}

func TestKeysAt(t *testing.T) {
	kinds := func(id string) string { return map[string]string{"house": "battery", "helm": "switch"}[id] }
	keys := func(path string) []string {
		var all []string
		for _, f := range KeysAt(path, kinds) {
			all = append(all, f.Key)
		}
		return all
	}
	assert.Equal(t, []string{"driploop", "job", "vessel"}, keys("")[:3])
	assert.Contains(t, keys("components.house"), "cranking")
	assert.NotContains(t, keys("components.helm"), "cranking")
	assert.Contains(t, keys("components.helm.links[0]"), "between")
	assert.Equal(t, []string{"from", "to"}, keys("conductors.P1.ends"))
	assert.Contains(t, keys("conductors.P1.route[3]"), "support")
	for _, path := range []string{"components", "conductors.P1.route", "job.number", "nowhere"} {
		assert.Empty(t, keys(path), path)
	}
}
