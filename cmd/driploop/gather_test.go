package main

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
		assert.Equal(t, want, isRecord([]byte(text)), "%q", text)
	}
}

func TestWithinAFolder(t *testing.T) {
	assert.True(t, within(".", "a.yaml"))
	assert.True(t, within("yard", "yard/a.yaml"))
	assert.True(t, within("yard/", "yard/deep/a.yaml"))
	assert.True(t, within("yard", "yard"))
	assert.False(t, within("yard", "yards/a.yaml"))
	assert.False(t, within("yard", "a.yaml"))
	assert.True(t, within("yard", "yard/..odd.yaml"))
}
