package rules

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestNewRefusesFaultyMetadata(t *testing.T) {
	const at = "protection/made_up.rego:"
	for name, c := range map[string]struct{ old, replacement, want string }{
		"no metadata":            {"# METADATA\n", "", "protection/made_up.rego: metadata: no METADATA comment before the package"},
		"no title":               {"# title: Fuse or breaker below what is asked\n", "", at + "2: metadata has no title"},
		"no why":                 {"description: Made up for tests.", "description:", at + "3: metadata has no description"},
		"no severity":            {"#   severity: warning\n", "", at + `6: "" is no severity`},
		"bad severity":           {"severity: warning", "severity: grave", at + `8: "grave" is no severity`},
		"no subject":             {"#   subject: devices\n", "", at + "6: metadata has no subject"},
		"unknown subject":        {"subject: devices", "subject: device", at + `9: "device" is no collection of facts; did you mean devices?`},
		"no applies":             {"#   applies: every fuse\n", "", at + "6: metadata has no applies"},
		"no says":                {`says: "rated {rated}, at least {limit.rated}"`, `says: ""`, at + "14: metadata has no says"},
		"no remedy":              {`remedy: "Fit a better one than {kind}."`, `remedy: ""`, at + "15: metadata has no remedy"},
		"no since":               {"#   since: 0.1.0\n", "", at + "6: metadata has no since"},
		"odd since":              {"since: 0.1.0", "since: soon", at + `19: since "soon" is no release`},
		"unknown key":            {"severity: warning", "severty: warning", at + `8: metadata: "severty" is no entry here; did you mean severity?`},
		"broken YAML":            {"severity: warning", "severity: [warning", at + "7: metadata:"},
		"schema not named":       {"#   - input: schema.facts", "#   - input: schema.other", at + "4: metadata has to say"},
		"unknown need":           {"needs: [rated_v]", "needs: [rated_v, ratd_v]", at + `11: devices has no fact "ratd_v"; did you mean rated_v?`},
		"unknown asked fact":     {"asks: [rating_a]", "asks: [rating_a, amps]", at + `12: devices has no fact "amps"`},
		"unknown vessel fact":    {"decides: [vessel.petrol]", "decides: [vessel.petrel]", at + `13: vessel has no fact "petrel"; did you mean petrol?`},
		"fact of another kind":   {"decides: [vessel.petrol]", "decides: [vessel.petrol, loads.kind]", at + `13: "loads.kind" is no fact that the rule can read`},
		"unknown source":         {"source: 33-cfr-183,", "source: 33-cfr-193,", at + `17: "33-cfr-193" is no source of sources.yaml; did you mean 33-cfr-183?`},
		"unknown practice set":   {"set: us-federal, source", "set: us-fedral, source", at + `17: "us-fedral" is no practice set; did you mean us-federal?`},
		"unknown trust":          {"trust: read}", "trust: certain}", at + `17: "certain" is no trust`},
		"citation says nothing":  {`asks: "enough volts"`, `asks: ""`, at + "17: citation does not say"},
		"id of another file":     {"id: protection/made-up", "id: protection/made-out", at + "7: id \"protection/made-out\" belongs in protection/made_out.rego"},
		"id in capitals":         {"id: protection/made-up", "id: Protection/made-up", at + "7: id \"Protection/made-up\" is not topic/fault"},
		"package of another":     {"package driploop.rules.protection.made_up", "package driploop.rules.protection.made", at + "20: package driploop.rules.protection.made is not that of id"},
		"related to nothing":     {"#   since", "#   related: [protection/made-down]\n#   since", at + `19: related rule "protection/made-down" does not exist`},
		"placeholder of nothing": {"at least {limit.rated}", "at least {limit.rating}", at + "14: {limit.rating} is given by no figure of the breach in line"},
		"remedy of nothing":      {"than {kind}", "than {brand}", at + "15: {brand} is given by no figure"},
		"asks without facts":     {"asks: [rating_a]", "asks: []", at + `12: the Rego rule "asks" and the list`},
		"limits of no such set":  {`limits := {"us-federal"`, `limits := {"uk": {}, "us-federal"`, at + "22: limits names uk, which brings the rule no clause"},
		"limits computed":        {`limits := {"us-federal": {"rated_v": 32}`, `limits := {"us-federal": {"rated_v": 16 + 16}`, at + "22: limits holds only numbers and words"},
		"breach no set":          {"breach contains {\n\t\"subject\": id,\n\t\"set\": \"us-federal\",", "breach[id] := {\n\t\"subject\": id,\n\t\"set\": \"us-federal\",", at + `43: breach is a set; write "breach contains`},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := newEngine(folder(t, map[string]string{soundFile: spoil(t, c.old, c.replacement)}))
			if c.want == "" {
				require.NoError(t, err)
				return
			}
			require.Error(t, err)
			assert.Contains(t, byLine(err), c.want)
		})
	}
}

func TestNewRefusesARuleWithoutBreach(t *testing.T) {
	text := strings.ReplaceAll(sound, "breach contains", "breech contains")
	_, err := newEngine(folder(t, map[string]string{soundFile: text}))
	require.ErrorContains(t, err, "protection/made_up.rego:20:1: the package defines no breach")
}

func TestNewNamesEveryFaultInOrderOfPlace(t *testing.T) {
	text := spoil(t, "severity: warning", "severity: grave")
	other := spoil(t, "id: protection/made-up", "id: protection/made-other")
	_, err := newEngine(folder(t, map[string]string{soundFile: text, "protection/made_other.rego": other}))
	require.Error(t, err)
	assert.Regexp(t, `(?s)^protection/made_other\.rego:20: package .*\nprotection/made_up\.rego:8: "grave"`, byLine(err))
}

func TestNewRefusesAnIDUsedTwice(t *testing.T) {
	_, err := newEngine(folder(t, map[string]string{soundFile: sound, "protection/twin.rego": sound}))
	require.ErrorContains(t, err, `id "protection/made-up" is that of protection/made_up.rego too`)
}

func TestUnverifiedSourcesAloneCarryACautionAtMost(t *testing.T) {
	grave := spoil(t, "trust: read}", "trust: unverified}")
	_, err := newEngine(folder(t, map[string]string{soundFile: grave}))
	require.NoError(t, err, "another source stands beside it")

	alone := `#     - {set: workmanship, source: common-practice, clause: "", asks: "enough amperes", trust: practice}` + "\n"
	require.Contains(t, grave, alone)
	for severity, refused := range map[string]bool{"danger": true, "warning": true, "caution": false, "notice": false} {
		text := unverifiedRule(severity)
		_, err := newEngine(folder(t, map[string]string{soundFile: text}))
		if refused {
			require.ErrorContains(t, err, "made_up.rego:8:5: a rule resting on unverified sources alone is caution or notice, not "+severity)
		} else {
			require.NoError(t, err)
		}
	}
}

func unverifiedRule(severity string) string {
	return `# METADATA
# title: Made up
# description: Made up for tests.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/made-up
#   severity: ` + severity + `
#   subject: devices
#   applies: every device
#   says: "a {kind}"
#   remedy: "Fit another."
#   sources:
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "another kind", trust: unverified}
#   since: 0.1.0
package driploop.rules.protection.made_up

breach contains {"subject": id, "figures": {"kind": device.kind}} if {
	some id, device in input.devices
	device.kind == "fuse"
}
`
}

func TestNewRefusesWhatDoesNotCompile(t *testing.T) {
	for name, c := range map[string]struct{ old, replacement, want string }{
		"misspelt fact of the vessel": {"input.vessel.petrol", "input.vessel.petrel", `protection/made_up.rego:35: vessel has no fact "petrel"; did you mean petrol?`},
		"misspelt fact":               {"device.rated_v < limits", "device.ratd_v < limits", `protection/made_up.rego:50: devices has no fact "ratd_v"; did you mean rated_v?`},
		"misspelt collection":         {"some id, device in input.devices\n\tdevice.rated_v < limits", "some id, device in input.devises\n\tdevice.rated_v < limits", `protection/made_up.rego:49: rules do not read input.devises; did you mean devices?`},
		"unused variable":             {"device.rating_a > 100", "device.rating_a > 100\n\tx := 1", "protection/made_up.rego:62: assigned var x unused"},
		"comparison of a text":        {"device.rating_a > 100", "device.rating_a > 100\n\tinput.vessel.petrol == \"yes\"", "protection/made_up.rego:62: match error"},
		"function outside the list":   {"device.rating_a > 100", "device.rating_a > 100\n\ttime.now_ns() > 0", "protection/made_up.rego:62: undefined function time.now_ns"},
		"network":                     {"device.rating_a > 100", "device.rating_a > 100\n\thttp.send({})", "protection/made_up.rego:62: undefined function http.send"},
		"syntax":                      {"device.rating_a > 100", "device.rating_a >", "protection/made_up.rego:62:"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := newEngine(folder(t, map[string]string{soundFile: spoil(t, c.old, c.replacement)}))
			require.Error(t, err)
			assert.Contains(t, byLine(err), c.want)
		})
	}
}
