package reports

import (
	"strconv"
	"strings"

	"driploop/model/verdict"
)

// undecided writes what could not be decided as a list of entries to fill in,
// each with the rules that wait for it, and then what no entry would cure.
func (t *recordText) undecided(open []*verdict.Verdict) {
	t.heading("WHAT COULD NOT BE DECIDED", verdictCount(len(open)))
	t.todo(t.src, waitsOf(open))
}

// waitsOf tells what undecided verdicts wait for.
func waitsOf(open []*verdict.Verdict) []wait {
	waits := make([]wait, 0, len(open))
	for _, v := range open {
		w := wait{what: v.Rule.ID, subject: v.Subject, severity: v.Severity, missing: v.Missing}
		if len(w.missing) == 0 {
			w.missing = []verdict.Gap{{Why: "the rule does not say what is missing"}}
		}
		waits = append(waits, w)
	}
	return waits
}

func verdictCount(n int) string { return plural(n, "verdict") }

// todo writes what is waited for as a list to work off.
func (p *page) todo(src *Source, waits []wait) {
	tasks, reasons := todo(waits)
	if len(tasks) > 0 {
		p.hang(0, 0, txt("Write these entries into the record, and judge again:"))
	}
	if len(tasks) > 0 {
		p.blank()
	}
	for _, task := range tasks {
		p.task(src, task)
	}
	if len(reasons) == 0 {
		return
	}
	if len(tasks) > 0 {
		p.blank()
	}
	p.hang(0, 0, txt("Here no entry of the record would help:"))
	p.blank()
	for _, r := range reasons {
		p.labelled(in(faint, "  -"), 5, txt(strings.Join(r.whys, "; ")))
		p.hang(5, 7, in(faint, "for "+strings.Join(r.namesAndSubjects(), "; ")))
	}
}

// task writes entries to fill in: all of one part by their paths, those of
// several parts by their pattern and the parts.
func (p *page) task(src *Source, t *task) {
	var title []string
	one := len(t.entries[0].fields) == 1
	for _, e := range t.entries {
		if one {
			title = append(title, e.fields[0])
		} else {
			title = append(title, e.pattern)
		}
	}
	first := t.entries[0]
	spans := []span{in(strong, strings.Join(title, ", "))}
	if one {
		spans = append(spans, txt(" "+glued(strings.TrimPrefix(src.lineOf(first.fields[0]), " "))))
	}
	if len(t.whys) > 0 {
		spans = append(spans, txt(": "+strings.Join(t.whys, "; ")))
	}
	p.labelled(txt("[ ]"), 5, spans...)
	if !one {
		parts := make([]string, 0, len(first.fields))
		for i, field := range first.fields {
			at := first.places[i]
			if len(t.entries) > 1 {
				field = at.part
			}
			parts = append(parts, at.name+strings.ReplaceAll(src.lineOf(field), " ", string(glue)))
		}
		p.hang(5, 5, txt("of "+strings.Join(parts, ", ")))
	}
	p.hang(5, 7, in(faint, "for "+strings.Join(t.names(), ", ")))
}

// lineOf says where in the file an entry belongs, or stands as unknown.
func (src *Source) lineOf(field string) string {
	if src == nil {
		return ""
	}
	for path := field; path != ""; path = parent(path) {
		at, ok := src.Find(path)
		switch {
		case ok && path == field && src.unknownAt(at.Start.Line):
			return " (line " + strconv.Itoa(at.Start.Line) + ", now unknown)"
		case ok:
			return " (line " + strconv.Itoa(at.Start.Line) + ")"
		}
	}
	return " (not in the record yet)"
}

// unknownAt tells whether a line of the record holds the value "unknown".
func (src *Source) unknownAt(line int) bool {
	text, _ := src.line(line)
	return strings.Contains(text, "unknown")
}
