package rules

import (
	"flag"
	"os"
	"runtime/debug"
	"testing"
)

// TestMain gives property tests a fixed seed unless one is asked for, and has the
// collector run as seldom as the program has it run.
func TestMain(m *testing.M) {
	flag.Parse()
	given := os.Getenv("RAPID_SEED") != ""
	flag.Visit(func(f *flag.Flag) { given = given || f.Name == "rapid.seed" })
	if !given {
		if err := flag.Set("rapid.seed", "1"); err != nil {
			panic(err)
		}
	}
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(400)
	}
	os.Exit(m.Run())
}
