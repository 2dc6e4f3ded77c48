// Package seed makes property tests draw the same cases in every run, so that a
// build is red or green for what it holds. For tests only.
package seed

import (
	"flag"
	"os"
)

// Fix gives property tests a fixed seed unless the command line or RAPID_SEED
// gives one. Call it from TestMain, before the tests run.
func Fix() {
	flag.Parse()
	given := os.Getenv("RAPID_SEED") != ""
	flag.Visit(func(f *flag.Flag) { given = given || f.Name == "rapid.seed" })
	if !given && flag.Lookup("rapid.seed") != nil {
		if err := flag.Set("rapid.seed", "1"); err != nil {
			panic(err)
		}
	}
}
