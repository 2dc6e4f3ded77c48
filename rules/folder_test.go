package rules

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"
)

// folder returns a folder of rules that holds the shipped registers and the
// given files.
func folder(t *testing.T, extra map[string]string) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	for _, name := range []string{"sources.yaml", "practice.yaml", "binding.rego", "schema/facts.json"} {
		text, err := fs.ReadFile(shipped, name)
		require.NoError(t, err)
		files[name] = &fstest.MapFile{Data: text}
	}
	for name, text := range extra {
		files[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return files
}

// sound is a rule without fault; tests spoil it in one place each.
const sound = `# METADATA
# title: Fuse or breaker below what is asked
# description: Made up for tests.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/made-up
#   severity: warning
#   subject: devices
#   applies: every fuse
#   needs: [rated_v]
#   asks: [rating_a]
#   decides: [vessel.petrol]
#   says: "rated {rated}, at least {limit.rated}"
#   remedy: "Fit a better one than {kind}."
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.455(d)", asks: "enough volts", trust: read}
#     - {set: workmanship, source: common-practice, clause: "", asks: "enough amperes", trust: practice}
#   since: 0.1.0
package driploop.rules.protection.made_up

limits := {"us-federal": {"rated_v": 32}, "workmanship": [{"when": "a fuse", "rated_v": 58}, {"rated_v": 48}]}

applies contains {"subject": id, "set": set} if {
	some id, device in input.devices
	device.kind == "fuse"
	some set in {"us-federal", "workmanship"}
	petrol(set)
}

petrol(set) if set == "workmanship"

petrol(set) if {
	set == "us-federal"
	input.vessel.petrol
}

asks contains {"subject": id, "fact": "rating_a"} if {
	some id, device in input.devices
	device.rated_v >= 40
}

breach contains {
	"subject": id,
	"set": "us-federal",
	"figures": {"rated_v": device.rated_v, "kind": device.kind},
	"limit": {"rated_v": limits["us-federal"].rated_v},
} if {
	some id, device in input.devices
	device.rated_v < limits["us-federal"].rated_v
}

breach contains {
	"subject": id,
	"set": "workmanship",
	"figures": {"rated_v": device.rated_v, "kind": device.kind},
	"limit": {"rated_v": limits.workmanship[0].rated_v},
} if {
	some id, device in input.devices
	device.rated_v >= 40
	device.rating_a > 100
}
`

const soundFile = "protection/made_up.rego"

// spoil replaces a part of the sound rule, which has to be there.
func spoil(t *testing.T, old, replacement string) string {
	t.Helper()
	require.Contains(t, sound, old)
	return strings.Replace(sound, old, replacement, 1)
}

func TestSoundRuleCompiles(t *testing.T) {
	_, err := newEngine(folder(t, map[string]string{soundFile: sound}))
	require.NoError(t, err)
}
