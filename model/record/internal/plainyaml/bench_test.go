package plainyaml

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"

	"driploop/model/record/internal/tree"
)

// BenchmarkParse sets the scanner beside yaml.v3 on a demo record.
func BenchmarkParse(b *testing.B) {
	text, err := os.ReadFile(filepath.Join("..", "..", "..", "..", "testdata", "records", "clean", "windlass.yaml"))
	require.NoError(b, err)
	b.Run("plain", func(b *testing.B) {
		b.ReportAllocs()
		b.SetBytes(int64(len(text)))
		var arena tree.Arena
		for b.Loop() {
			require.NotNil(b, Parse(string(text), &arena))
			arena.Forget()
		}
	})
	b.Run("yaml.v3", func(b *testing.B) {
		b.ReportAllocs()
		b.SetBytes(int64(len(text)))
		for b.Loop() {
			var doc yaml.Node
			require.NoError(b, yaml.NewDecoder(bytes.NewReader(text)).Decode(&doc))
		}
	})
}
