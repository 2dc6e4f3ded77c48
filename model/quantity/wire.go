package quantity

import (
	"fmt"
	"strconv"
	"strings"
	"sync"
)

// WireSystem is the way in which a conductor's size is stated.
type WireSystem string

// The systems of conductor sizes.
const (
	AWG WireSystem = "AWG" // American wire gauge, ASTM B258
	SAE WireSystem = "SAE" // nominal gauge of SAE J1127 or J1128, with less copper than AWG
	MM2 WireSystem = "mm2" // nominal area, IEC 60228
)

// WireSize is the size of a conductor as marked. Gauge counts 1/0 as 0, 2/0 as
// -1 and so on, and holds for AWG and SAE; MM2 is the nominal area and holds for
// the metric system.
type WireSize struct {
	System WireSystem
	Gauge  int
	MM2    float64
}

// String returns the size as the trade writes it, such as "2/0 AWG" or "16 mm2".
func (s WireSize) String() string {
	switch s.System {
	case "":
		return ""
	case MM2:
		return strconv.FormatFloat(s.MM2, 'f', -1, 64) + " mm2"
	}
	if name, held := gaugeNames()[s]; held {
		return name
	}
	return s.gauge()
}

func (s WireSize) gauge() string {
	if s.Gauge <= 0 {
		return strconv.Itoa(1-s.Gauge) + "/0 " + string(s.System)
	}
	return strconv.Itoa(s.Gauge) + " " + string(s.System)
}

// gaugeNames holds the names of the gauges from 4/0 to 40.
var gaugeNames = sync.OnceValue(func() map[WireSize]string {
	names := map[WireSize]string{}
	for _, system := range []WireSystem{AWG, SAE} {
		for gauge := -3; gauge <= 40; gauge++ {
			size := WireSize{System: system, Gauge: gauge}
			names[size] = size.gauge()
		}
	}
	return names
})

const wireSizeHelp = `a conductor size is written like "8 AWG", "2/0 AWG", "8 SAE" or "16 mm2"`

// WirePattern is a regular expression, for Go and ECMAScript alike, of the texts
// that ParseWireSize can read. It says nothing of their range.
const WirePattern = `^\s*([0-9]+(/0)?\s*(AWG|SAE)|([0-9]+\.?[0-9]*|\.[0-9]+)\s*mm[2²])\s*$`

// ParseWireSize reads a conductor size such as "8 AWG", "2/0 AWG" (also "00
// AWG"), "8 SAE" or "16 mm2". The error is a *ParseError.
func ParseWireSize(text string) (WireSize, error) {
	fail := func(what string) (WireSize, error) {
		return WireSize{}, &ParseError{Text: text, Says: fmt.Sprintf("%s %s; %s", quote(text), what, wireSizeHelp)}
	}
	trimmed := trim(text)
	i := 0
	for i < len(trimmed) && (isDigit(trimmed[i]) || trimmed[i] == '.' || trimmed[i] == '/') {
		i++
	}
	if i == len(trimmed) {
		return fail("has no gauge system")
	}
	value, system := trimmed[:i], trim(trimmed[i:])
	if system != "AWG" && system != "SAE" && system != "mm2" {
		system = canonical(system)
	}
	switch {
	case value == "":
		return fail("does not begin with a number")
	case system == "mm2":
		area, err := strconv.ParseFloat(value, 64)
		if err != nil || !(area > 0) || area > 1000 {
			return fail("is not an area above 0 and up to 1000 mm2")
		}
		return WireSize{System: MM2, MM2: area}, nil
	case system == "AWG" || system == "SAE":
		gauge, ok := parseGauge(value)
		if !ok {
			return fail("is not a gauge from 40 to 4/0")
		}
		return WireSize{System: WireSystem(system), Gauge: gauge}, nil
	}
	return fail("is not in a gauge system known here")
}

func parseGauge(value string) (int, bool) {
	if zeros, ok := strings.CutSuffix(value, "/0"); ok {
		n, err := strconv.Atoi(zeros)
		return 1 - n, err == nil && n >= 1 && n <= 4
	}
	if value != "" && strings.Trim(value, "0") == "" {
		return 1 - len(value), len(value) <= 4
	}
	n, err := strconv.Atoi(value)
	return n, err == nil && n >= 1 && n <= 40 && value[0] != '0' && value[0] != '+'
}
