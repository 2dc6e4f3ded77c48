package rules

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A list of clauses that is at odds with the rules is refused, with what is
// wrong.
func TestCoverageRefuses(t *testing.T) {
	list, err := fs.ReadFile(shipped, "clauses/33-cfr-183.yaml")
	require.NoError(t, err)
	for name, c := range map[string]struct{ from, to, want string }{
		"a clause without rule or reason": {
			`, left: outside, why: "it is for 50 V and more"`, "", "clause 183.455(c)(2) has neither a rule that judges it nor a reason why none does",
		},
		"a citation that is not listed": {`clause: "183.455(d)"`, `clause: "183.455(z)", left: scope, why: x`, "cites 183.455(d) of 33-cfr-183"},
		"a clause twice":                {`clause: "183.401(b)"`, `clause: "183.401(a)"`, "clause 183.401(a) stands twice"},
		"an unknown reason":             {"left: term", "left: perhaps", `clause 183.402 is left as "perhaps"`},
		"a reason not given":            {`left: term, why: `, `left: term, asks2: `, "asks2"},
		"a reason beside a rule":        {`size and insulation rating, brief surges aside"`, `x", left: scope, why: y`, `clause 183.425(b) is left as "scope", yet conductors/overloaded cites it`},
		"another document":              {"source: 33-cfr-183", "source: 46-cfr-28", `names source "46-cfr-28"`},
	} {
		t.Run(name, func(t *testing.T) {
			require.Contains(t, string(list), c.from)
			files := fstest.MapFS{"clauses/33-cfr-183.yaml": {Data: []byte(strings.Replace(string(list), c.from, c.to, 1))}}
			engine, err := New()
			require.NoError(t, err)
			engine.files = files
			_, err = engine.Coverage()
			assert.ErrorContains(t, err, c.want)
		})
	}
}
