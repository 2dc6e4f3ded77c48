package circuit

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"driploop/model/record"
)

// read decodes a record that must be without faults.
func read(t require.TestingT, text string) *record.Record {
	if h, ok := t.(*testing.T); ok {
		h.Helper()
	}
	r, faults := record.Decode("test.yaml", []byte(text))
	require.Empty(t, faults, "%s", text)
	require.NotNil(t, r)
	return r
}

// sketch writes a record from short lines, so that a network fits on a page.
// Components are "id: keys of the component"; conductors are
// "id: from > to, size, length" and may go on with ", role" or more keys.
func sketch(vessel, components, conductors string) string {
	var b strings.Builder
	if !strings.Contains(vessel, "system:") {
		vessel = "system: 12 V, " + vessel
	}
	b.WriteString("driploop: 1\njob: {number: T-1, title: Test}\nvessel: {" + vessel + "}\n")
	b.WriteString("spaces:\n  hold: {kind: locker, exposure: dry, ambient: 30 degC}\ncomponents:\n")
	for _, line := range lines(components) {
		id, keys, _ := strings.Cut(line, ":")
		fmt.Fprintf(&b, "  %s: {%s}\n", id, strings.TrimSpace(keys))
	}
	b.WriteString("conductors:\n")
	for _, line := range lines(conductors) {
		b.WriteString(sketchConductor(line))
	}
	return b.String()
}

func sketchConductor(line string) string {
	id, rest, _ := strings.Cut(line, ":")
	way, rest, _ := strings.Cut(rest, ",")
	from, to, _ := strings.Cut(way, ">")
	keys := []string{"from: " + strings.TrimSpace(from), "to: " + strings.TrimSpace(to)}
	length := ""
	role := "positive"
	for i, part := range strings.Split(rest, ",") {
		part = strings.TrimSpace(part)
		switch {
		case part == "" || part == "-":
		case i == 0:
			keys = append(keys, "size: "+part)
		case i == 1:
			length = part
			keys = append(keys, "length: "+part)
		case strings.Contains(part, ":"):
			keys = append(keys, part)
		default:
			role = part
		}
	}
	keys = append(keys, "role: "+role)
	if !strings.Contains(rest, "insulation:") {
		keys = append(keys, "insulation: 105 degC")
	}
	if !strings.Contains(rest, "route:") && length != "" {
		keys = append(keys, "route: [{space: hold, length: "+length+", in: open, bundle: none}]")
	}
	return fmt.Sprintf("  %s: {%s}\n", id, strings.Join(keys, ", "))
}

func lines(text string) []string {
	var out []string
	for _, line := range strings.Split(text, "\n") {
		if line = strings.TrimSpace(line); line != "" {
			out = append(out, line)
		}
	}
	return out
}

// analyse reads and analyses a sketch.
func analyse(t require.TestingT, vessel, components, conductors string) *Analysis {
	return Analyse(read(t, sketch(vessel, components, conductors)))
}

const boat = "system: 12 V, earthing: negative-ground"
