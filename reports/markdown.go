package reports

import (
	"bytes"
	"fmt"
	"strings"
	"time"

	"driploop/model/verdict"
)

// markdownRoom is how long a summary may be, in bytes. What hosts take as a
// comment on a change ends at 65,536 characters.
const markdownRoom = 60_000

// detail is how much a summary tells.
type detail struct {
	why     bool // why a finding matters, and where that is written
	places  int  // of one finding, the first that are shown
	tasks   int  // of what is missing
	records int  // that are told of, after the table
	rows    int  // of the table
}

// details are the choices, the fullest first. The last always fits.
func details() []detail {
	const all = 1 << 30
	return []detail{
		{true, all, all, all, all},
		{true, 20, 40, all, all},
		{false, 10, 20, all, all},
		{false, 3, 5, all, all},
		{false, 2, 3, 20, 200},
		{false, 1, 0, 5, 200},
		{false, 0, 0, 0, 200},
	}
}

// markdown writes parts of a summary.
type markdown struct {
	bytes.Buffer
	o      Options
	detail detail
}

// line writes a line.
func (m *markdown) line(format string, with ...any) { fmt.Fprintf(m, format+"\n", with...) }

// fold writes a part that the reader opens.
func (m *markdown) fold(summary string, part func()) {
	m.line("<details><summary>%s</summary>\n", summary)
	part()
	m.line("\n</details>\n")
}

// markdownCounts is what the first line and the table count.
type markdownCounts struct {
	records, open int
	breaches      map[verdict.Severity]int
}

func countBreaches(rec *verdict.Record) map[verdict.Severity]int {
	by := map[verdict.Severity]int{}
	for i := range rec.Verdicts {
		if v := &rec.Verdicts[i]; v.Outcome == verdict.Breach {
			by[v.Severity]++
		}
	}
	return by
}

// conclusion is the summary of the summary.
func (c *markdownCounts) conclusion(faults []verdict.Fault) string {
	var parts []string
	breaches := listSeverities(c.breaches)
	switch {
	case c.records == 0:
		parts = append(parts, "No record was judged")
	case breaches != "":
		parts = append(parts, breaches+" in "+plural(c.records, "installation record"))
	default:
		parts = append(parts, "No breach found in "+plural(c.records, "installation record"))
	}
	if c.open > 0 {
		parts = append(parts, fmt.Sprintf("%d undecided", c.open))
	}
	if n := unusable(faults); n > 0 {
		parts = append(parts, plural(n, "file")+" unusable")
	}
	return strings.Join(parts, ", ")
}

const markdownHead = "| record | job | danger | warning | caution | notice | undecided | waived | met |\n|---|---|--:|--:|--:|--:|--:|--:|--:|\n"

// markdownRow counts the verdicts of a record, as a row of the table.
func markdownRow(rec *verdict.Record, by map[verdict.Severity]int) []byte {
	return fmt.Appendf(nil, "| %s | %s | %d | %d | %d | %d | %d | %d | %d |\n", markdownCode(rec.Path), markdownCode(rec.Job),
		by[verdict.Danger], by[verdict.Warning], by[verdict.Caution], by[verdict.Notice],
		rec.Counts[verdict.Undecided], rec.Counts[verdict.Waived], rec.Counts[verdict.Met])
}

// faults lists what keeps files from being judged.
func (m *markdown) faults(all []verdict.Fault) {
	if len(all) == 0 {
		return
	}
	m.line("### What could not be used: %s\n", plural(unusable(all), "file"))
	for i, f := range all {
		if i == m.detail.places {
			m.line("- and %s", plural(len(all)-i, "more fault"))
			break
		}
		place := markdownCode(f.Path)
		if f.At.Line > 0 {
			place += fmt.Sprintf(", line %d", f.At.Line)
		}
		m.line("- %s: %s", place, markdownCode(f.Says))
	}
	m.line("")
}

// foot is what stands under every summary: notes, cautions, by what the records
// were judged, and when if that is told.
func (m *markdown) foot(run *verdict.Run, notes []string, shortened bool) {
	for _, note := range notes {
		m.line("Note: %s\n", markdownText(sentence(note)))
	}
	if shortened {
		m.line("This summary is shortened to fit a comment; `driploop check` tells all.\n")
	}
	m.line("%s\n", Caution)
	provenance := "driploop " + markdownText(run.Version) + ", rules " + markdownCode(run.Rules)
	if !m.o.At.IsZero() {
		provenance += ", " + m.o.At.Format(time.RFC3339)
	}
	m.line("<sub>%s</sub>", provenance)
}
