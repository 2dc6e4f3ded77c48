package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// found is what a technician finds aboard, by entry: an invented windlass job that
// was done well.
func found() map[string]string {
	return map[string]string{
		"job.number": "J-1", "completed": "2026-11-18", "auxiliary": "none", "earthing": "negative-ground", "ac": "false", "vessel.length": "9.4 m",
		"exposure": "damp", "ambient": "30 degC", "fuel_vapour": "none", "exhaust": "[]", "fuel_line": "false", "open_to_air": "false",
		"enclosure": "fire-retardant", "stud_material": "tin-plated-copper", "chemistry": "agm", "cranking": "1150 A", "capacity": "220 Ah", "units": "2", "units_match": "true",
		"movement": "5 mm", "test_force": "90 lbf", "test_time": "60 s", "pulls": "5", "ungrounded_covered": "true", "fuel_above": "none", "fuel_metal_near": "40 in",
		"internal_resistance": "3.2 mohm", "vented_to": "outside", "vent_opening": "40 cm2", "ignition_protected": "true", "means": "bulkhead",
		"voltage": "32 V", "interrupt": "10 kA", "trip_free": "true", "reset": "manual", "rating": "250 A", "continuous": "300 A", "intermittent": "500 A",
		"curve": "blade-c", "holder": "30 A", "deck_switch": "true", "guarded": "true", "interlocked": "true", "run_time": "3 min", "min_voltage": "10 V", "stall": "250 A",
		"protector": "thermal-auto", "motor_limit": "4 min", "links.rating": "200 A", "coils.current": "1 A",
		"material": "copper", "strands": "836", "class": "type-3", "standard": "ul-1426", "tinned": "true", "diameter": "11 mm", "sheath": "none", "twisted": "false",
		"bend_radius": "150 mm", "splices": "0", "labelled": "both", "compass_distance": "3 m", "spacing": "20 mm",
		"route.length": "14 ft", "in": "open", "bilge": "above", "bundle": "none", "support_kind": "cushioned-clamp", "support": "400 mm",
		"hole": "M8", "stud": "M8", "order": "1", "barrel": "[2 AWG, 2 AWG]", "tool": "ratchet", "calibrated": "true", "matching": "true", "pull": "2.6 kN", "pull_time": "60 s",
		"soldered": "none", "torque": "12 N.m", "torque_range": "[10 N.m, 14 N.m]", "cover": "heat-shrink-adhesive", "metal": "tin-plated-copper", "washer_in_path": "false",
		"nut": "lock-nut", "slack": "two", "damaged_strands": "0", "broken_strands": "0", "drip_loop": "true", "falls": "false",
		"build": "solid", "skin": "frp", "gelcoat": "false", "part": "bulkhead", "watertight": "false", "isolates": "none", "kind": "gland", "grips": "[10 mm, 14 mm]", "holes": "2",
		"compound": "polysulphide", "applied": "2026-11-10", "bedding.on": "[frp]", "count": "4", "load_bearing": "false", "side": "both",
		"result": "pass", "on": "2026-11-19", "current": "90 A", "at_source": "12.6 V", "at_load": "12.0 V", "tolerance": "0.2 V", "polarity": "correct",
	}
}

var (
	entryLine = regexp.MustCompile(`^( *)(?:- )?([a-z_]+):(.*)$`)
	openEntry = regexp.MustCompile(`\b([a-z_]+): unknown`)
)

// filled answers every entry of a record that is unknown but the sign-off, by its
// key or, where two are called alike, by the part that it stands in.
func filled(t *testing.T, text string) string {
	t.Helper()
	answers, part := found(), map[int]string{}
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		m := entryLine.FindStringSubmatch(line)
		if m == nil || strings.HasPrefix(line, "#") {
			if strings.HasPrefix(line, "#") {
				continue
			}
			m = []string{"", line[:len(line)-len(strings.TrimLeft(line, " "))], "", ""}
		}
		depth := len(m[1])
		for d := range part {
			if d >= depth {
				delete(part, d)
			}
		}
		above := ""
		for d := depth; d >= 0 && above == ""; d-- {
			above = part[d]
		}
		if m[2] != "" {
			part[depth] = m[2]
		}
		if above == "sign_off" {
			continue
		}
		lines[i] = openEntry.ReplaceAllStringFunc(line, func(entry string) string {
			key := strings.TrimSuffix(entry, ": unknown")
			value, ok := answers[above+"."+key]
			if !ok {
				value, ok = answers[key]
			}
			require.True(t, ok, "nobody asked the technician for %s of %s", key, above)
			return key + ": " + value
		})
	}
	return strings.Join(lines, "\n")
}

// TestFromNothingToSignedOff goes the whole way of a new user: a few answers, what
// was found written in, what that brings up, the last fault mended, signed.
func TestFromNothingToSignedOff(t *testing.T) {
	job := filepath.Join(t.TempDir(), "job.yaml")
	driploop := func(code int, args ...string) string {
		t.Helper()
		var out, errs strings.Builder
		require.Equal(t, code, run(args, strings.NewReader(""), &out, &errs), "%v\n%s%s", args, out.String(), errs.String())
		return out.String()
	}
	edit := func(change func(string) string) {
		t.Helper()
		text, err := os.ReadFile(job)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(job, []byte(change(string(text))), 0o600))
	}
	driploop(0, "start", "--kind", "windlass", "--boat", "Testalina", "--voltage", "12 V", "--hull", "frp", "--propulsion", "diesel-inboard",
		"--current", "85 A", "--load", "open-deck", "--length", "28 ft", "--holes", "2", "-o", job)
	for range 3 { // one answer brings up another question
		edit(func(text string) string { return filled(t, text) })
		driploop(0, "ask", "--write", job)
	}
	edit(func(text string) string { return filled(t, text) })

	told := driploop(1, "check", "--config", "none", job)
	assert.Contains(t, told, "WHAT COULD NOT BE DECIDED: 1 verdict\n", "every question was asked")
	assert.Contains(t, told, "sign_off.on", "of which one is left")
	assert.Contains(t, told, "terminations/barrel-not-gauge", "the control wires sit in barrels for the power cable")
	edit(func(text string) string {
		before, control, ok := strings.Cut(text, "C1: &control-cable")
		require.True(t, ok)
		control = strings.Replace(control, "barrel: [2 AWG, 2 AWG]", "barrel: [16 AWG, 14 AWG]", 1)
		return before + "C1: &control-cable" + control
	})
	assert.Contains(t, driploop(0, "check", "--config", "none", job), "No breach found")

	edit(func(text string) string {
		before, _, ok := strings.Cut(text, "sign_off:")
		require.True(t, ok)
		return before + "sign_off:\n  by: Ann Example\n  on: 2026-11-20\n"
	})
	told = driploop(0, "check", "--config", "none", "--complete", "--gate", "notice", job)
	assert.Contains(t, told, "No breach found, and nothing left undecided")
	driploop(0, "remedy", job)
}
