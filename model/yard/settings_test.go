package yard

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/verdict"
)

func TestSettingsAreReadWithTheirPlaces(t *testing.T) {
	s, faults := Read("yard/driploop.yaml", []byte(`practice: [us-federal, us-voluntary]
gate: danger
complete: true
units: us
severity:
  routing/no-slack: {to: notice, reason: on trailers}
exclude: ["archive/**", "**/draft-*.yaml"]
rules: [house-rules]
documents:
  any: {entries: [sign_off.by, tests.polarity]}
  battery-bank: {files: ["photos/*.jpg"]}
baseline: old.json
`))
	require.Empty(t, faults)
	assert.Equal(t, []string{"us-federal", "us-voluntary"}, s.Practice.V)
	assert.Equal(t, Word{"danger", verdict.Position{Line: 2, Column: 7}}, s.Gate)
	assert.True(t, s.Complete.V)
	assert.Equal(t, []Change{{Rule: "routing/no-slack", To: verdict.Notice, Reason: "on trailers", At: verdict.Position{Line: 6, Column: 3}}}, s.Severity)
	assert.Equal(t, filepath.Join("yard", "house-rules"), s.Rules[0].Path)
	require.Len(t, s.Documents, 2)
	assert.Equal(t, []string{"sign_off.by", "tests.polarity"}, s.Documents[0].Entries)
	assert.Equal(t, "photos/*.jpg", s.Documents[1].Files[0].Text)
	for path, left := range map[string]bool{
		"yard/archive/a.yaml": true, "yard/archive/deep/a.yaml": true, "yard/draft-1.yaml": true, "yard/boats/draft-1.yaml": true,
		"yard/boats/a.yaml": false, "yard/archives/a.yaml": false,
	} {
		assert.Equal(t, left, s.leaves(path), path)
	}
	assert.True(t, s.isRules("yard/house-rules"))
	assert.False(t, s.isRules("yard/house-rules/topic"))
}

func TestFaultsOfSettingsSayWhereAndWhatWouldBeRight(t *testing.T) {
	for text, want := range map[string]string{
		"gat: danger\n":                     `1:1 settings have no key "gat"; did you mean "gate"?`,
		"gate: dangr\n":                     `1:7 "dangr" is none of the words for "gate"; did you mean "danger"?`,
		"gate:\n":                           `1:6 "gate" wants one word, such as warning`,
		"practice: [us-federl]\n":           `1:12 "us-federl" is none of the words for "practice"; did you mean "us-federal"?`,
		"complete: maybe\n":                 `1:11 "complete" is true or false`,
		"gate: danger\ngate: notice\n":      `2:1 "gate" is here twice; the first one stands in line 1, column 1`,
		"severity: {a/b: {to: notice}}\n":   `1:17 a/b: a change of severity wants a reason that every report can show`,
		"severity: {a/b: {reason: x}}\n":    `1:17 a/b: say which severity: {to: notice, reason: "…"}`,
		"rules: [../outside]\n":             `1:9 a folder of rules stands below the folder of this file, such as [house-rules]`,
		"exclude: [\"../x\"]\n":             `1:11 a pattern begins at the folder of this file and stays below it, such as ["archive/**", "**/draft-*.yaml"]`,
		"documents: {thrustr: {}}\n":        `1:13 kinds of job have no key "thrustr"; did you mean "thruster"?`,
		"documents: {any: {entries: [a]}}":  `1:29 no entry "a" can be required; these can: `,
		"documents: {any: {entrys: [job]}}": `1:19 required documents have no key "entrys"; did you mean "entries"?`,
		"- gate\n":                          `1:1 settings are a mapping; here stands a list`,
		"exclude: []\n":                     `1:10 "exclude" is an empty list; write it like ["archive/**", "**/draft-*.yaml"], or leave it out`,
	} {
		_, faults := Read("driploop.yaml", []byte(text))
		if assert.Len(t, faults, 1, text) {
			got := fmt.Sprintf("%d:%d %s", faults[0].At.Line, faults[0].At.Column, faults[0].Says)
			assert.Contains(t, got, want, text)
		}
	}
	_, faults := Read("driploop.yaml", []byte("gate: [\n"))
	require.Len(t, faults, 1)
	assert.Equal(t, 2, faults[0].At.Line+1)
	_, faults = Read("driploop.yaml", []byte("# nothing yet\n"))
	assert.Len(t, faults, 1, "comments alone are no mapping")
}

func TestEverySettingIsExplained(t *testing.T) {
	s, faults := Read("driploop.yaml", []byte("gate: danger\n"))
	require.Empty(t, faults)
	told := s.Explain()
	assert.Len(t, told, len(settings()))
	for _, k := range told {
		assert.NotEmpty(t, k.Value, k.Key)
		assert.NotEmpty(t, k.Says, k.Key)
		if k.Key == "gate" {
			assert.Equal(t, "driploop.yaml:1:7", k.From)
		} else {
			assert.Equal(t, "default", k.From, k.Key)
		}
	}
}

func TestSettingsAreFoundAboveUpToTheRepository(t *testing.T) {
	root := t.TempDir()
	write := func(path, text string) {
		whole := filepath.Join(root, path)
		require.NoError(t, os.MkdirAll(filepath.Dir(whole), 0o755))
		require.NoError(t, os.WriteFile(whole, []byte(text), 0o600))
	}
	write("driploop.yaml", "gate: notice\n")
	write("one/.git/HEAD", "")
	write("one/driploop.yaml", "gate: danger\n")
	write("one/boats/a.yaml", "driploop: 1\n")
	write("two/.git/HEAD", "")
	write("two/a.yaml", "driploop: 1\n")
	write("three/driploop.yaml", "driploop: 1\njob: {number: X}\n")
	for arg, want := range map[string]string{
		"one": "one/driploop.yaml", "one/boats": "one/driploop.yaml", "one/boats/a.yaml": "one/driploop.yaml",
		"two": "", "two/a.yaml": "", "three": "driploop.yaml",
	} {
		path, err := Locate([]string{filepath.Join(root, arg)})
		require.NoError(t, err)
		if want == "" {
			assert.Empty(t, path, arg)
			continue
		}
		assert.True(t, same(path, filepath.Join(root, want)), "%s: %s", arg, path)
	}
	_, err := Locate([]string{filepath.Join(root, "one"), filepath.Join(root, "two")})
	assert.ErrorContains(t, err, "different settings")
}
