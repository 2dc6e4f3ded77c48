package plainyaml

import (
	"os"
	"testing"

	"driploop/model/internal/seed"
)

func TestMain(m *testing.M) {
	seed.Fix()
	os.Exit(m.Run())
}
