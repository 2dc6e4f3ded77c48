package main

import (
	"encoding/json"
	"io"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// imports returns the packages of the project with what each imports of it,
// tests aside.
func imports(t *testing.T) map[string][]string {
	t.Helper()
	out, err := exec.Command("go", "list", "-json=ImportPath,Imports", "driploop/...").Output()
	require.NoError(t, err)
	all := map[string][]string{}
	for decoder := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p struct {
			ImportPath string
			Imports    []string
		}
		if err := decoder.Decode(&p); err == io.EOF {
			return all
		}
		require.NoError(t, err)
		all[p.ImportPath] = nil
		for _, i := range p.Imports {
			if strings.HasPrefix(i, "driploop/") {
				all[p.ImportPath] = append(all[p.ImportPath], i)
			}
		}
	}
}

func TestArrowsPointDown(t *testing.T) {
	all := imports(t)
	for _, room := range []string{"driploop/cmd/driploop", "driploop/rules", "driploop/reports", "driploop/model/facts"} {
		require.Contains(t, all, room)
	}
	for from, list := range all {
		for _, to := range list {
			switch {
			case strings.HasPrefix(from, "driploop/model"):
				assert.True(t, strings.HasPrefix(to, "driploop/model"), "%s imports %s: model imports nothing above it", from, to)
			case strings.HasPrefix(from, "driploop/rules"):
				assert.False(t, strings.HasPrefix(to, "driploop/reports"), "%s imports %s", from, to)
			case strings.HasPrefix(from, "driploop/reports"):
				assert.False(t, strings.HasPrefix(to, "driploop/rules"), "%s imports %s", from, to)
			}
			assert.NotEqual(t, "driploop/cmd/driploop", to, "%s imports the command", from)
		}
	}
	for _, to := range all["driploop/model/verdict"] {
		assert.Equal(t, "driploop/model/quantity", to, "verdict imports quantities only")
	}
}
