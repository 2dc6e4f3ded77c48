package yard

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestIsRecordByContent(t *testing.T) {
	for text, want := range map[string]bool{
		"driploop: 1\n":                                         true,
		"# a comment\ndriploop: 1\njob: {}\n":                   true,
		"job: {}\n\"driploop\" : 1\n":                           true,
		"'driploop': 1\n":                                       true,
		"{driploop: 1, job: {number: X}}":                       true,
		"  {\n   job: {number: X}, driploop: 1}":                true,
		"\ufeffdriploop: 1\n":                                   true,
		"driploop: [1\n":                                        true, // cannot be parsed, names itself
		"\xff\xfed\x00r\x00i\x00p\x00l\x00o\x00o\x00p\x00:\x00": true, // UTF-16
		"":                          false,
		"job: {number: X}\n":        false,
		"tools:\n  driploop: 1\n":   false,
		"note: see driploop: 1\n":   false,
		"- driploop: 1\n":           false,
		"a: [driploop\n":            false,
		"notes: |\n  driploop: 1\n": false,
		"driploops: 1\n":            false,
	} {
		assert.Equal(t, want, IsRecord([]byte(text)), "%q", text)
	}
}

func TestWithinAFolder(t *testing.T) {
	assert.True(t, Within(".", "a.yaml"))
	assert.True(t, Within("yard", "yard/a.yaml"))
	assert.True(t, Within("yard/", "yard/deep/a.yaml"))
	assert.True(t, Within("yard", "yard"))
	assert.False(t, Within("yard", "yards/a.yaml"))
	assert.False(t, Within("yard", "a.yaml"))
	assert.True(t, Within("yard", "yard/..odd.yaml"))
}
