package record

import (
	"bytes"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"
)

// BenchmarkDecode sets decoding beside its floor, yaml.v3's parse to nodes.
func BenchmarkDecode(b *testing.B) {
	for _, n := range []int{30, 100, 400} {
		text := recordOf(n)
		b.Run(fmt.Sprintf("conductors=%d/parse", n), func(b *testing.B) {
			b.ReportAllocs()
			b.SetBytes(int64(len(text)))
			for b.Loop() {
				var doc yaml.Node
				require.NoError(b, yaml.NewDecoder(bytes.NewReader(text)).Decode(&doc))
			}
		})
		b.Run(fmt.Sprintf("conductors=%d/decode", n), func(b *testing.B) {
			b.ReportAllocs()
			b.SetBytes(int64(len(text)))
			for b.Loop() {
				_, faults := Decode("bench.yaml", text)
				require.Empty(b, faults)
			}
		})
	}
}

// BenchmarkSyntaxFault is the time to place a syntax error, here near the end.
func BenchmarkSyntaxFault(b *testing.B) {
	for _, n := range []int{30, 400} {
		text := append(recordOf(n), "sign_off: {by: x on: 2026-06-18}\n"...)
		b.Run(fmt.Sprintf("conductors=%d", n), func(b *testing.B) {
			for b.Loop() {
				_, faults := Decode("bench.yaml", text)
				require.Len(b, faults, 1)
			}
		})
	}
}
