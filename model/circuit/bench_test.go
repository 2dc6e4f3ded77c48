package circuit

import (
	"fmt"
	"strings"
	"testing"

	"driploop/model/record"
)

// town is a record with about the given number of conductors: a bank, and
// panels in a tree of eight branches each, every branch with its fuse and a load
// or a further panel; one tie in ten panels makes a ring.
func town(conductors int) string {
	var parts, wires strings.Builder
	parts.WriteString("bat: kind: battery, nominal: 12 V, internal_resistance: 3 mohm, cranking: 900 A\nmain: kind: fuse, rating: 250 A\n")
	parts.WriteString("pos0: kind: busbar\nneg0: kind: busbar\n")
	wires.WriteString("W1: bat.pos > main.line, 2/0 AWG, 150 mm\nW2: main.load > pos0.in, 2/0 AWG, 1 m\nW3: bat.neg > neg0.in, 2/0 AWG, 1 m, negative\n")
	count := 3
	wire := func(from, to, size string, mm int, role string) {
		count++
		fmt.Fprintf(&wires, "W%d: %s > %s, %s, %d mm, %s\n", count, from, to, size, mm, role)
	}
	panel := 0
	for k := 1; count < conductors; k++ {
		from := (k - 1) / 8
		fmt.Fprintf(&parts, "f%d: kind: breaker, rating: 15 A\n", k)
		wire(fmt.Sprintf("pos%d.b%d", from, k), fmt.Sprintf("f%d.line", k), "8 AWG", 200, "positive")
		if panel < k && k%8 < 2 {
			panel = k
		}
		fmt.Fprintf(&parts, "pos%d: kind: busbar\nneg%d: kind: busbar\n", k, k)
		wire(fmt.Sprintf("f%d.load", k), fmt.Sprintf("pos%d.in", k), "10 AWG", 1000, "positive")
		wire(fmt.Sprintf("neg%d.b%d", from, k), fmt.Sprintf("neg%d.in", k), "10 AWG", 1000, "negative")
		fmt.Fprintf(&parts, "lamp%d: kind: lamp, current: %d mA\n", k, 10+k%50)
		wire(fmt.Sprintf("pos%d.l", k), fmt.Sprintf("lamp%d.pos", k), "16 AWG", 500, "positive")
		wire(fmt.Sprintf("neg%d.l", k), fmt.Sprintf("lamp%d.neg", k), "16 AWG", 500, "negative")
		if k%10 == 9 {
			wire(fmt.Sprintf("pos%d.t", k), fmt.Sprintf("pos%d.t", k-1), "10 AWG", 700, "positive")
		}
	}
	return sketch(boat, parts.String(), wires.String())
}

func BenchmarkAnalyse(b *testing.B) {
	for _, n := range []int{10, 100, 1000, 10000} {
		r, faults := record.Decode("town.yaml", []byte(town(n)))
		if len(faults) > 0 {
			b.Fatal(faults)
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Analyse(r)
			}
		})
	}
}
