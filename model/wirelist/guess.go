package wirelist

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"driploop/model/record"
)

// kindWords are the words by which names of equipment tell what it is: common
// practice, no source. The first that fits decides; one with a blank behind it has
// to be a whole word.
func kindWords() [][2]string {
	return [][2]string{
		{"fuse", "fuse"},
		{"breaker", "breaker"},
		{"mcb", "breaker"},
		{"brk", "breaker"},
		{"cb ", "breaker"},
		{"isolator", "switch"},
		{"switch", "switch"},
		{"sw ", "switch"},
		{"disconnect", "switch"},
		{"relay", "relay"},
		{"solenoid", "relay"},
		{"contactor", "relay"},
		{"controller", "controller"},
		{"charger", "charger"},
		{"alternator", "alternator"},
		{"solar", "solar"},
		{"generator", "generator"},
		{"bus", "busbar"},
		{"bar", "busbar"},
		{"post", "busbar"},
		{"block", "busbar"},
		{"panel", "busbar"},
		{"battery", "battery"},
		{"batt", "battery"},
		{"bank", "battery"},
		{"pump", "pump"},
		{"blower", "blower"},
		{"fan", "blower"},
		{"light", "lamp"},
		{"lamp", "lamp"},
		{"windlass", "motor"},
		{"thruster", "motor"},
		{"winch", "motor"},
		{"starter", "motor"},
		{"motor", "motor"},
		{"wiper", "motor"},
		{"fridge", "refrigerator"},
		{"refrigerator", "refrigerator"},
		{"freezer", "refrigerator"},
		{"inverter", "inverter"},
		{"heater", "heater"},
		{"ground", "ground"},
		{"earth", "ground"},
		{"engine", "ground"},
		{"plug", "connector"},
		{"socket", "connector"},
		{"connector", "connector"},
		{"radio", "electronics"},
		{"vhf", "electronics"},
		{"plotter", "electronics"},
		{"gps", "electronics"},
		{"radar", "electronics"},
		{"sounder", "electronics"},
		{"display", "electronics"},
		{"stereo", "electronics"},
		{"ais", "electronics"},
		{"pilot", "electronics"},
		{"house ", "battery"},
		{"neg ", "busbar"},
		{"negative", "busbar"},
		{"minus", "busbar"},
	}
}

// kindOf tells from its name what a piece of equipment is.
func kindOf(name string) (string, bool) {
	plain := " " + normal(name) + " "
	for _, w := range kindWords() {
		if strings.Contains(plain, " "+w[0]) || strings.HasSuffix(strings.TrimSpace(plain), w[0]) {
			return w[1], true
		}
	}
	return "busbar", false
}

// identifier makes an id of a name, in small letters.
func identifier(name string) string {
	plain := identifierKeepingCase(strings.ReplaceAll(strings.ToLower(name), "+", " pos"))
	return strings.Join(strings.FieldsFunc(plain, func(r rune) bool { return r == '-' }), "-")
}

// identifierKeepingCase makes an id that looks like the text.
func identifierKeepingCase(text string) string {
	var b strings.Builder
	for _, r := range strings.TrimSpace(text) {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' || r == '-' {
			b.WriteRune(r)
		} else {
			b.WriteByte('-')
		}
	}
	const most = 48 // of the 64 that an id can have
	id := strings.Trim(b.String(), "-_")
	if r := []rune(id); len(r) > most {
		id = string(r[:most])
	}
	return id
}

// splitPlace parts "house.pos", "Battery +" or "Bus:4" into a name and a
// terminal, which is empty if none is named.
func splitPlace(text string) (name, terminal string) {
	text = strings.TrimSpace(text)
	for _, sign := range [][2]string{{"+", "pos"}, {"-", "neg"}, {"–", "neg"}, {"−", "neg"}} {
		if bare, ok := strings.CutSuffix(text, sign[0]); ok && strings.TrimSpace(bare) != "" {
			return strings.TrimRight(bare, " ("), sign[1]
		}
	}
	if i := strings.LastIndexAny(text, ".:"); i > 0 && i < len(text)-1 {
		return text[:i], terminalWord(text[i+1:])
	}
	fields := strings.Fields(text)
	if n := len(fields); n > 1 {
		if w := terminalWord(fields[n-1]); w != identifier(fields[n-1]) || slices.Contains([]string{"pos", "neg", "line", "load", "in", "out", "case"}, w) {
			return strings.Join(fields[:n-1], " "), w
		}
	}
	return text, ""
}

// terminalWord is the record's word for a terminal.
func terminalWord(text string) string {
	id := identifier(text)
	switch id {
	case "positive", "plus", "p":
		return "pos"
	case "negative", "minus", "n", "return":
		return "neg"
	case "":
		if strings.Contains(text, "-") || strings.Contains(text, "−") {
			return "neg"
		}
	}
	return id
}

// roleOf tells the role of a conductor from a word.
func roleOf(text string) (string, bool) {
	switch plain := normal(text); {
	case plain == "" && strings.Contains(text, "+"):
		return "positive", true
	case plain == "" && strings.ContainsAny(text, "-−–"):
		return "negative", true
	case slices.Contains([]string{"positive", "pos", "plus", "feed", "supply", "p", "dc positive", "12v", "24v", "live", "hot"}, plain):
		return "positive", true
	case slices.Contains([]string{"negative", "neg", "minus", "return", "n", "dc negative", "0v"}, plain):
		return "negative", true
	case slices.Contains([]string{"bonding", "bond", "earth", "ground", "grounding", "pe"}, plain):
		return "bonding", true
	case slices.Contains([]string{"control", "signal", "sense", "trigger", "switched"}, plain):
		return "control", true
	}
	return "", false
}

// returns reports whether a name is that of a bar or stud for the negatives.
func returns(name string) bool {
	kind, _ := kindOf(name)
	words := strings.Fields(normal(name))
	return kind == "busbar" && slices.ContainsFunc([]string{"neg", "negative", "minus", "return", "returns"}, func(w string) bool { return slices.Contains(words, w) })
}

// terminalFor is the terminal of a component that a conductor lands on if the
// list does not say: on the side of the source at its end, on the other at its
// start.
func terminalFor(kind, role string, starts bool, taken int) string {
	k := record.KindOf(kind)
	switch {
	case k.OneNode:
		return fmt.Sprintf("t%d", taken+1)
	case role == "bonding" && k.Case:
		return record.CaseTerminal
	case slices.Contains(k.Terminals, "pos"):
		if role == "negative" {
			return "neg"
		}
		return "pos"
	case len(k.Terminals) == 2 && starts == (role != "negative"):
		return k.Terminals[1]
	case len(k.Terminals) == 2:
		return k.Terminals[0]
	}
	return "in"
}
