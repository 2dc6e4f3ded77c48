// Package outside finds the programs, not ours, that tests of reports have read
// what is written.
package outside

import (
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"testing"
)

// Program returns the path of a program that apt installs. Without it the test is
// skipped, but fails where CI=true, so that no build goes green unchecked.
func Program(t *testing.T, name, packet string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		missing(t, name, "apt-get install "+packet)
	}
	return path
}

// Module returns the folder of an npm package of .tools/npm, under the same terms.
func Module(t *testing.T, name string) string {
	t.Helper()
	path := filepath.Join(Modules(), filepath.FromSlash(name))
	if _, err := os.Stat(path); err != nil {
		missing(t, name, "npm ci --prefix .tools/npm")
	}
	return path
}

// Modules is the folder that npm puts its packages into.
func Modules() string {
	_, file, _, _ := runtime.Caller(0)
	return filepath.Join(filepath.Dir(file), "..", "..", "..", ".tools", "npm", "node_modules")
}

func missing(t *testing.T, name, install string) {
	t.Helper()
	if os.Getenv("CI") == "true" {
		t.Fatalf("%s is needed: %s", name, install)
	}
	t.Skipf("%s is not installed: %s", name, install)
}
