package main

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestSchemaInAnEditor has yaml-language-server, which most editors use for
// YAML, read the schema of a record.
func TestSchemaInAnEditor(t *testing.T) {
	server, err := filepath.Abs("../../.tools/npm/node_modules/yaml-language-server/bin/yaml-language-server")
	require.NoError(t, err)
	if _, err := os.Stat(server); err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("yaml-language-server is missing: npm ci --prefix .tools/npm")
		}
		t.Skip("yaml-language-server is missing: npm ci --prefix .tools/npm")
	}
	dir := t.TempDir()
	var schema bytes.Buffer
	require.Equal(t, exitClean, run([]string{"schema"}, nil, &schema, io.Discard))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "record.schema.json"), schema.Bytes(), 0o600))
	const text = `# yaml-language-server: $schema=./record.schema.json
driploop: 1
job: {number: A-1}
vessel: {system: 12 V, hull: FRP, lenth: 9 m}
components:
  fuse: {kind: fuse, rating: 30, cranking: 900 A}
`
	file := filepath.Join(dir, "job.yaml")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
	cmd := exec.Command("node", "testdata/yaml-server.js", server, file, text)
	timer := time.AfterFunc(90*time.Second, func() { _ = cmd.Process.Kill() })
	defer timer.Stop()
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", out)
	said := string(out)
	assert.Regexp(t, `diagnostic 3 .*lenth`, said, "an unknown key")
	assert.Regexp(t, `diagnostic 3 .*"frp"`, said, "a word that is none of the words")
	assert.Regexp(t, `diagnostic 5 .*`, said, "a measure without a unit, and a key of another kind")
	assert.Contains(t, said, "What the hull is built of")
	assert.Regexp(t, `completion .*aluminium`, said)
}
