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

// TestSummariesForgetWhatTheyWillNotTell: once a detail is sure not to fit, no
// record is rendered in it any more; rendering all of them first, when nothing is
// sure yet, gives the same summary. More records are told of shorter, and the
// counts are of all.
func TestSummariesForgetWhatTheyWillNotTell(t *testing.T) {
	shortened := 0
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
		s, err := reports.Open(&want, "md", *whole, reports.Options{})
		require.NoError(t, err)
		chunks := make([]reports.Chunk, n)
		for i := range whole.Records {
			chunks[i], err = s.Render(&whole.Records[i], nil)
			require.NoError(t, err)
		}
		for _, c := range chunks {
			require.NoError(t, s.Add(c))
		}
		require.NoError(t, s.Close(whole))
		got := string(render(t, "md", whole, reports.Options{}))
		assert.Equal(t, want.String(), got, "%d records", n)
		assert.LessOrEqual(t, len(got), 60_000)
		assert.Contains(t, got, fmt.Sprintf(" in %d installation records", n))
		assert.NotContains(t, got, "judged by no practice set", "whatever is told of a record is told whole")
		if strings.Contains(got, "more records are not listed") {
			shortened++
			assert.Contains(t, got, "jobs/0199.yaml")
			assert.NotContains(t, got, "jobs/0200.yaml")
		}
	}
	assert.Positive(t, shortened)
}

// TestSummaryOfLongPathsFits: two hundred rows of long paths would not.
func TestSummaryOfLongPathsFits(t *testing.T) {
	long := make([]verdict.Record, 300)
	for i := range long {
		long[i] = launch()
		long[i].Path = fmt.Sprintf("%04d/%s.yaml", i, strings.Repeat("deep/", 200))
	}
	got := string(render(t, "md", run(long...), reports.Options{}))
	assert.LessOrEqual(t, len(got), 60_000)
	assert.Regexp(t, `\n\d+ more records are not listed`, got)
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
