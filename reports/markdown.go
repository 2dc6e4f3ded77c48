package reports

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"time"

	"driploop/model/quantity"
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

// Markdown renders a run as a summary for a merge request: a line on what was
// found, counts by record, what to fix first, what is open. Long parts are folded,
// and left out where all would not fit into one comment, which is said.
func Markdown(w io.Writer, run *verdict.Run, o Options) error {
	if o.Units == "" {
		o.Units = quantity.Both
	}
	var text []byte
	for i, d := range details() {
		m := &markdown{run: run, o: o, detail: d, shortened: i > 0}
		m.write()
		if text = m.Bytes(); len(text) <= markdownRoom || o.All {
			break
		}
	}
	_, err := w.Write(text)
	return err
}

// markdown writes one summary.
type markdown struct {
	bytes.Buffer
	run       *verdict.Run
	o         Options
	detail    detail
	shortened bool
}

// line writes a line.
func (m *markdown) line(format string, with ...any) { fmt.Fprintf(m, format+"\n", with...) }

// fold writes a part that the reader opens.
func (m *markdown) fold(summary string, part func()) {
	m.line("<details><summary>%s</summary>\n", summary)
	part()
	m.line("\n</details>\n")
}

func (m *markdown) write() {
	m.line("## %s\n", m.conclusion())
	m.table()
	for i := range m.run.Records {
		if i == m.detail.records {
			m.line("%s are not told of here.\n", plural(len(m.run.Records)-i, "more record"))
			break
		}
		if m.overfull() {
			return
		}
		r := &markdownRecord{markdown: m, rec: &m.run.Records[i], src: m.o.Sources[m.run.Records[i].Path]}
		r.write()
	}
	m.faults()
	for _, note := range m.run.Notes {
		m.line("Note: %s\n", markdownText(sentence(note)))
	}
	if m.shortened {
		m.line("This summary is shortened to fit a comment; `driploop check` tells all.\n")
	}
	m.line("%s\n", Caution)
	m.line("<sub>%s</sub>", m.provenance())
}

// overfull tells that the summary is too long already, and will be shortened.
func (m *markdown) overfull() bool { return !m.o.All && m.Len() > markdownRoom }

// conclusion is the summary of the summary.
func (m *markdown) conclusion() string {
	var breaches []*verdict.Verdict
	open := 0
	for i := range m.run.Records {
		rec := &m.run.Records[i]
		open += rec.Counts[verdict.Undecided]
		for j := range rec.Verdicts {
			if rec.Verdicts[j].Outcome == verdict.Breach {
				breaches = append(breaches, &rec.Verdicts[j])
			}
		}
	}
	var parts []string
	switch n := len(m.run.Records); {
	case n == 0:
		parts = append(parts, "No record was judged")
	case len(breaches) > 0:
		parts = append(parts, severityCounts(breaches)+" in "+plural(n, "installation record"))
	default:
		parts = append(parts, "No breach found in "+plural(n, "installation record"))
	}
	if open > 0 {
		parts = append(parts, fmt.Sprintf("%d undecided", open))
	}
	if n := unusable(m.run.Faults); n > 0 {
		parts = append(parts, plural(n, "file")+" unusable")
	}
	return strings.Join(parts, ", ")
}

// table counts by record.
func (m *markdown) table() {
	if len(m.run.Records) == 0 {
		return
	}
	m.line("| record | job | danger | warning | caution | notice | undecided | waived | met |")
	m.line("|---|---|--:|--:|--:|--:|--:|--:|--:|")
	for i := range m.run.Records {
		if i == m.detail.rows {
			m.line("\n%s are not listed.", plural(len(m.run.Records)-i, "more record"))
			break
		}
		rec := &m.run.Records[i]
		by := map[verdict.Severity]int{}
		for j := range rec.Verdicts {
			if v := &rec.Verdicts[j]; v.Outcome == verdict.Breach {
				by[v.Severity]++
			}
		}
		m.line("| %s | %s | %d | %d | %d | %d | %d | %d | %d |", markdownCode(rec.Path), markdownCode(rec.Job),
			by[verdict.Danger], by[verdict.Warning], by[verdict.Caution], by[verdict.Notice],
			rec.Counts[verdict.Undecided], rec.Counts[verdict.Waived], rec.Counts[verdict.Met])
	}
	m.line("")
}

// faults lists what keeps files from being judged.
func (m *markdown) faults() {
	if len(m.run.Faults) == 0 {
		return
	}
	m.line("### What could not be used: %s\n", plural(unusable(m.run.Faults), "file"))
	for i, f := range m.run.Faults {
		if i == m.detail.places {
			m.line("- and %s", plural(len(m.run.Faults)-i, "more fault"))
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

// provenance says by what, and when if told, the records were judged.
func (m *markdown) provenance() string {
	text := "driploop " + markdownText(m.run.Version) + ", rules " + markdownCode(m.run.Rules)
	if !m.o.At.IsZero() {
		text += ", " + m.o.At.Format(time.RFC3339)
	}
	return text
}
