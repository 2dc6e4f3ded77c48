package reports_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/verdict"
	"driploop/reports"
)

// TestManyRecordsAreSummedUpAsIfAllWereKept: the summary that forgets, record by
// record, what it will not tell says the same as one made of the whole run.
func TestManyRecordsAreSummedUpAsIfAllWereKept(t *testing.T) {
	for _, n := range []int{2, 30, 150, 900} {
		whole := hostileRun()
		first := whole.Records
		whole.Records = nil
		for i := range n {
			rec := first[i%len(first)]
			rec.Path = fmt.Sprintf("jobs/%04d.yaml", i)
			whole.Records = append(whole.Records, rec)
		}
		var want bytes.Buffer
		require.NoError(t, reports.Markdown(&want, whole, reports.Options{}))
		got := render(t, "md", whole, reports.Options{})
		assert.Equal(t, want.String(), string(got), "%d records", n)
	}
}

// TestNotesStandInEverySuite: what concerns the run is known at its end, and each
// suite of the JUnit report says it.
func TestNotesStandInEverySuite(t *testing.T) {
	r := hostileRun()
	r.Records = append(r.Records, r.Records...)
	r.Faults = []verdict.Fault{{Path: "broken.yaml", Says: "is no record"}}
	r.Notes = []string{`a <note> & "more"`}
	text := string(render(t, "junit", r, reports.Options{}))
	note := `<property name="note" value="a &lt;note&gt; &amp; &#34;more&#34;"></property>`
	assert.Equal(t, len(r.Records)+1, strings.Count(text, note))
	assert.Equal(t, len(r.Records)+1, strings.Count(text, "<testsuite "))
}
