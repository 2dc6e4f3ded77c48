package record

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// head is what every record needs; what follows it begins in line 4.
const head = "driploop: 1\njob: {number: T-1}\nvessel: {system: 12 V}\n"

// faulty is a text with all its faults, as line:column: what is wrong.
type faulty struct {
	name, text string
	want       []string
}

func (f faulty) check(t *testing.T) {
	r, faults := Decode("r", []byte(f.text))
	require.NotNil(t, r)
	got := make([]string, len(faults))
	for i, fault := range faults {
		got[i] = strings.TrimPrefix(fault.String(), "r:")
	}
	assert.Equal(t, f.want, got)
}

func TestFaultsOfKeysAndValues(t *testing.T) {
	for _, c := range valueFaults() {
		t.Run(c.name, c.check)
	}
}

func valueFaults() []faulty {
	return []faulty{
		{"an unknown key, near a known one", head + `spaces:
  bow: {knd: locker}
`, []string{
			`5:9: "knd" is no key of a space; did you mean "kind"?`,
		}},
		{"an unknown key, near none", head + `spaces:
  bow: {zzz: locker}
`, []string{
			`5:9: "zzz" is no key of a space; its keys are kind, exposure, ambient, fuel_vapour, petrol_source, exhaust, fuel_line, machinery, open_to_air, volume and bilge_water`,
		}},
		{"an unknown key at the top", head + `conductor: {}
`, []string{
			`4:1: "conductor" is no key of a record; did you mean "conductors"?`,
		}},
		{"a key of another kind of component", head + `components:
  b: {kind: pump, trip_free: true}
`, []string{
			`5:19: a pump has no "trip_free": that belongs to breaker`,
		}},
		{"a key of another kind, near one of this", head + `components:
  b: {kind: switch, rating: 200 A, continuus: 200 A}
`, []string{
			`5:21: a switch has no "rating": that belongs to fuse, breaker, busbar, relay, controller and connector`,
			`5:36: "continuus" is no key of a switch; did you mean "continuous"?`,
		}},
		{"a missing unit", head + `spaces:
  bow: {ambient: 30}
`, []string{
			`5:18: "30" has no unit; a temperature is written in degF or degC`,
		}},
		{"a unit of another dimension", head + `spaces:
  bow: {ambient: 30 mm}
`, []string{
			`5:18: "30 mm" is a length; a temperature is wanted here, written in degF or degC`,
		}},
		{"a unit that is none", head + `spaces:
  bow: {volume: 30 gallons}
`, []string{
			`5:17: "gallons" is no unit known here; a volume is written in L, ft3 or m3`,
		}},
		{"not a number", head + `spaces:
  bow: {ambient: warm}
`, []string{
			`5:18: "warm" is not a temperature; write a number and a unit, such as "50 degC"`,
		}},
		{"a decimal comma", head + `spaces:
  bow: {volume: '0,4 m3'}
`, []string{
			`5:17: "0,4 m3" has a comma in its number; write a decimal point and no thousands separators`,
		}},
		{"a length of zero", head + `conductors:
  P1: {from: a.pos, to: b.pos, role: positive, length: 0 mm}
components: {a: {kind: battery}, b: {kind: pump}}
`, []string{
			`5:56: "length" cannot be zero; write what it is, or unknown`,
		}},
		{"a negative length", head + `penetrations:
  p: {panel: {thickness: -3 mm}}
`, []string{
			`5:26: "thickness" cannot be negative, and here stands -3 mm`,
		}},
		{"a negative where zero may be", head + `penetrations:
  p: {hole: {gap: -1 mm}}
`, []string{
			`5:19: "gap" cannot be negative, and here stands -1 mm`,
		}},
		{"a count below one", head + `components:
  b: {kind: battery, units: 0, pulls: -1}
`, []string{
			`5:29: "units" cannot be 0; write a number from 1 up`,
			`5:39: "pulls" cannot be -1; write a number from 0 up`,
		}},
		{"a count that is none", head + `components:
  b: {kind: battery, units: 2.5, pulls: many}
`, []string{
			`5:29: "2.5" is no whole number; write "units: 2"`,
			`5:41: "many" is no whole number; write "pulls: 5"`,
		}},
		{"a flag in YAML 1.1", head + `components:
  b: {kind: battery, managed: yes, tray: none}
`, []string{
			`5:31: "yes" is no flag; write true or false (yes is a plain text since YAML 1.2)`,
		}},
		{"a quoted flag", head + `components:
  b: {kind: battery, managed: 'true'}
`, []string{
			`5:31: "true" is no flag; write true or false without quotation marks`,
		}},
		{"a word outside its list", head + `spaces:
  bow: {kind: loker, exposure: soaked}
`, []string{
			`5:15: "loker" is no value of "kind"; did you mean "locker"?`,
			`5:32: "soaked" is no value of "exposure"; write dry, damp, wet, washed or immersed`,
		}},
		{"a conductor size without its system", head + `components: {a: {kind: battery}, b: {kind: pump}}
conductors:
  P1: {from: a.pos, to: b.pos, role: positive, size: 8}
`, []string{
			`6:54: "8" has no gauge system; a conductor size is written like "8 AWG", "2/0 AWG", "8 SAE" or "16 mm2"`,
		}},
		{"a colour", head + `components: {a: {kind: battery}, b: {kind: pump}}
conductors:
  P1: {from: a.pos, to: b.pos, role: positive, colour: yelow}
`, []string{
			`6:56: "yelow" is no value of "colour"; write one of black, blue, brown, dark-blue, green, grey, light-blue, orange, pink, purple, red, tan, violet, white, yellow, clear or bare, with a stripe as green/yellow`,
		}},
		{"a stud without unit and a code", head + `components:
  b: {kind: busbar, stud: 8, ip: IP68X}
`, []string{
			`5:27: "8" is no value of "stud"; write it as marked, such as M8, 5/16 in, #10 or 10 mm`,
			`5:34: "IP68X" is no value of "ip"; write a code of IEC 60529, such as IP67 or IP66/IP67`,
		}},
		{"a day that is not in the calendar", head + `sign_off: {on: 2026-02-30}
`, []string{
			`4:16: "2026-02-30" is no day of the calendar; write year-month-day, such as 2026-06-18`,
		}},
		{"a date in another order", head + `sign_off: {on: 18.06.2026}
`, []string{
			`4:16: "18.06.2026" is no date; write year-month-day, such as 2026-06-18`,
		}},
		{"a year alone", head + `sign_off: {on: 2026}
`, []string{
			`4:16: "2026" is no date; write year-month-day, such as 2026-06-18`,
		}},
	}
}
