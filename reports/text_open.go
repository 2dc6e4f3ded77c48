package reports

import (
	"fmt"
	"strings"

	"driploop/model/verdict"
)

// undecided writes what could not be decided as a list of entries to fill in,
// each with the rules that wait for it, and then what no entry would cure.
func (t *recordText) undecided(open []*verdict.Verdict) {
	t.heading("WHAT COULD NOT BE DECIDED", verdictCount(len(open)))
	waits := make([]wait, 0, len(open))
	for _, v := range open {
		w := wait{what: v.Rule.ID, subject: v.Subject, severity: v.Severity, missing: v.Missing}
		if len(w.missing) == 0 {
			w.missing = []verdict.Gap{{Why: "the rule does not say what is missing"}}
		}
		waits = append(waits, w)
	}
	t.todo(t.src, waits)
}

func verdictCount(n int) string { return plural(n, "verdict") }

// todo writes what is waited for as a list to work off.
func (p *page) todo(src *Source, waits []wait) {
	tasks, reasons := todo(waits)
	if len(tasks) > 0 {
		p.hang(0, 0, txt("Write these entries into the record, and judge again:"))
	}
	for _, task := range tasks {
		p.blank()
		p.task(src, task)
	}
	if len(reasons) == 0 {
		return
	}
	if len(tasks) > 0 {
		p.blank()
	}
	p.hang(0, 0, txt("Here no entry of the record would help:"))
	for _, r := range reasons {
		p.blank()
		p.labelled(in(faint, "  -"), 5, txt(r.why))
		p.hang(5, 7, in(faint, "for "+strings.Join(r.namesAndSubjects(), ", ")))
	}
}

// task writes one kind of entry to fill in.
func (p *page) task(src *Source, t *task) {
	var title []span
	if len(t.fields) == 1 {
		title = []span{in(strong, t.fields[0]), txt(src.line(t.fields[0]))}
	} else {
		title = []span{in(strong, t.pattern)}
	}
	if t.why != "" {
		title = append(title, txt(": "+t.why))
	}
	p.labelled(txt("[ ]"), 5, title...)
	if len(t.fields) > 1 {
		var places []string
		for _, field := range t.fields {
			_, which := patternOf(field)
			places = append(places, which+strings.ReplaceAll(src.line(field), " ", string(glue)))
		}
		p.hang(5, 5, txt("of "+strings.Join(places, ", ")))
	}
	p.hang(5, 7, in(faint, "for "+strings.Join(t.names(), ", ")))
}

// line says where in the file an entry belongs, or stands as unknown.
func (src *Source) line(field string) string {
	if src == nil {
		return ""
	}
	if at, ok := src.Places[field]; ok {
		if src.unknownAt(at.Start.Line) {
			return fmt.Sprintf(" (line %d, now unknown)", at.Start.Line)
		}
		return fmt.Sprintf(" (line %d)", at.Start.Line)
	}
	for path := parent(field); path != ""; path = parent(path) {
		if at, ok := src.Places[path]; ok {
			return fmt.Sprintf(" (line %d)", at.Start.Line)
		}
	}
	return " (not in the record yet)"
}

// unknownAt tells whether a line of the record holds the value "unknown".
func (src *Source) unknownAt(line int) bool {
	return line >= 1 && line <= len(src.Lines) && strings.Contains(src.Lines[line-1], "unknown")
}

// parent is the path one step up: of "a.b[2]" it is "a.b", of "a" nothing.
func parent(path string) string {
	return path[:max(strings.LastIndexAny(path, ".["), 0)]
}
