package main

import (
	"errors"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "rewrite the expected outputs in testdata/script")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"driploop": main})
}

func TestScripts(t *testing.T) {
	records, err := filepath.Abs("../../testdata/records")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:           "../../testdata/script",
		UpdateScripts: *update,
		Setup: func(env *testscript.Env) error {
			env.Setenv("RECORDS", records)
			env.Setenv("XDG_CACHE_HOME", filepath.Join(env.WorkDir, ".cache"))
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"exitcode": exitcode, "edit": editFile},
	})
}

// exitcode runs a command and demands an exit code:
//
//	exitcode 2 driploop check none.yaml
func exitcode(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exitcode CODE COMMAND ARG...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var failed *exec.ExitError
		if !errors.As(err, &failed) {
			ts.Fatalf("%v", err)
		}
		got = failed.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

// editFile replaces a text in a file wherever it stands:
//
//	edit job.yaml 'exposure: unknown' 'exposure: wet'
func editFile(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: edit FILE OLD NEW")
	}
	text := ts.ReadFile(args[0])
	if !strings.Contains(text, args[1]) {
		ts.Fatalf("%s has no %q", args[0], args[1])
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(strings.ReplaceAll(text, args[1], args[2])), 0o600))
}
