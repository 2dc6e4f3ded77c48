package diagram_test

import (
	"flag"
	"os"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the expected outputs in testdata/reports")

// TestMain gives property tests a fixed seed unless one is asked for.
func TestMain(m *testing.M) {
	flag.Parse()
	given := os.Getenv("RAPID_SEED") != ""
	flag.Visit(func(f *flag.Flag) { given = given || f.Name == "rapid.seed" })
	if !given {
		if err := flag.Set("rapid.seed", "1"); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}
