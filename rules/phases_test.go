package rules

import (
	"bytes"
	"fmt"
	"path"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
)

// multiplied returns a record with the parts of a demo record several times over,
// each time by other ids, and nothing brought by aliases.
func multiplied(t testing.TB, text string, times int) string {
	t.Helper()
	root, leaves := tree(t, text)
	for _, l := range leaves { // an edited way is an opened one
		root = reading(root, l, l.value.Value)
	}
	sections := []string{"spaces", "components", "conductors", "penetrations"}
	ids := map[string]bool{}
	for i := 0; i < len(root.Content); i += 2 {
		if slices.Contains(sections, root.Content[i].Value) {
			for k := 0; k < len(root.Content[i+1].Content); k += 2 {
				ids[root.Content[i+1].Content[k].Value] = true
			}
		}
	}
	for i := 0; i < len(root.Content); i += 2 {
		if section := root.Content[i+1]; slices.Contains(sections, root.Content[i].Value) {
			once := section.Content
			for n := 1; n < times; n++ {
				for _, one := range once {
					section.Content = append(section.Content, renamed(one, ids, fmt.Sprintf("-%d", n)))
				}
			}
		}
	}
	out, err := yaml.Marshal(root)
	require.NoError(t, err)
	return string(out)
}

// renamed returns a tree in which every id, alone or before a dot, has an ending.
func renamed(node *yaml.Node, ids map[string]bool, ending string) *yaml.Node {
	own := *node
	own.Content = make([]*yaml.Node, len(node.Content))
	for i, child := range node.Content {
		if i > 0 && (node.Content[i-1].Value == "kind" || node.Content[i-1].Value == "purpose") {
			own.Content[i] = child // a word of the format
			continue
		}
		own.Content[i] = renamed(child, ids, ending)
	}
	if id, rest, dotted := strings.Cut(own.Value, "."); node.Kind == yaml.ScalarNode && ids[id] {
		own.Value = id + ending
		if dotted {
			own.Value += "." + rest
		}
	}
	return &own
}

// BenchmarkCheck sets the parts of a check beside its floor, yaml.v3's parse to
// nodes, in turns within one run, so that a busy machine slows all alike. "x-parse"
// is the whole as a multiple of the floor, by medians.
func BenchmarkCheck(b *testing.B) {
	engine := readEngine(b)
	for _, name := range []string{"clean/windlass.yaml", "faulty/thruster-launch.yaml"} {
		for _, n := range []int{30, 100, 400} {
			text := demos(b)[name]
			r, _ := solved(b, name, text)
			source := []byte(multiplied(b, text, (n+len(r.Conductors)-1)/len(r.Conductors)))
			b.Run(fmt.Sprintf("%s/n=%d", path.Dir(name), n), func(b *testing.B) {
				phases := []string{"parse", "decode", "analyse", "facts", "judge"}
				took := make([][]float64, len(phases))
				var builder facts.Builder // used again, as check does
				for b.Loop() {
					last := time.Now()
					lap := func(phase int) {
						now := time.Now()
						took[phase] = append(took[phase], float64(now.Sub(last).Microseconds()))
						last = now
					}
					var node yaml.Node
					require.NoError(b, yaml.NewDecoder(bytes.NewReader(source)).Decode(&node))
					lap(0)
					r, faults := record.Decode("record.yaml", source)
					lap(1)
					require.Empty(b, faults)
					analysis := circuit.Analyse(r)
					lap(2)
					doc := builder.Build(r, analysis)
					lap(3)
					_, err := engine.JudgeBriefly(r, doc, testDay)
					require.NoError(b, err)
					lap(4)
				}
				whole := 0.0
				for i, phase := range phases {
					slices.Sort(took[i])
					median := took[i][len(took[i])/2]
					b.ReportMetric(median, phase+"-us")
					if i > 0 {
						whole += median
					}
				}
				b.ReportMetric(whole, "check-us")
				b.ReportMetric(whole/took[0][len(took[0])/2], "x-parse")
			})
		}
	}
}
