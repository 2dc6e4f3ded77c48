package reports

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"driploop/model/verdict"
)

// undecided writes what could not be decided as a list of entries to fill in,
// each with the rules that wait for it, and then what no entry would cure.
func (t *recordText) undecided(open []*verdict.Verdict) {
	t.heading("WHAT COULD NOT BE DECIDED", verdictCount(len(open)))
	tasks, reasons := todo(open)
	if len(tasks) > 0 {
		t.hang(0, 0, txt("Write these entries into the record, and judge again:"))
	}
	for _, task := range tasks {
		t.blank()
		t.task(task)
	}
	if len(reasons) == 0 {
		return
	}
	if len(tasks) > 0 {
		t.blank()
	}
	t.hang(0, 0, txt("Here no entry of the record would help:"))
	for _, r := range reasons {
		t.blank()
		t.labelled(in(faint, "  -"), 5, txt(r.why))
		t.hang(5, 7, in(faint, "for "+strings.Join(r.waits(), ", ")))
	}
}

func verdictCount(n int) string { return plural(n, "verdict") }

// waiting is one thing that verdicts wait for: entries of the same kind, or a
// reason.
type waiting struct {
	pattern  string // of the entries; empty for a reason
	why      string
	fields   []string
	verdicts []*verdict.Verdict
}

// todo sorts what is missing into entries of the same kind and reasons that no
// entry cures; what the worst and the most verdicts wait for comes first.
func todo(open []*verdict.Verdict) (tasks, reasons []*waiting) {
	at := map[[2]string]*waiting{}
	for _, v := range open {
		missing := v.Missing
		if len(missing) == 0 {
			missing = []verdict.Gap{{Why: "the rule does not say what is missing"}}
		}
		for _, gap := range missing {
			pattern, _ := patternOf(gap.Field)
			key := [2]string{pattern, gap.Why}
			w := at[key]
			if w == nil {
				w = &waiting{pattern: pattern, why: gap.Why}
				at[key] = w
				if pattern == "" {
					reasons = append(reasons, w)
				} else {
					tasks = append(tasks, w)
				}
			}
			w.add(gap.Field, v)
		}
	}
	slices.SortStableFunc(tasks, byUrgency)
	slices.SortStableFunc(reasons, byUrgency)
	return tasks, reasons
}

func (w *waiting) add(field string, v *verdict.Verdict) {
	if !slices.Contains(w.fields, field) {
		w.fields = append(w.fields, field)
	}
	if !slices.Contains(w.verdicts, v) {
		w.verdicts = append(w.verdicts, v)
	}
}

func byUrgency(a, b *waiting) int {
	return cmp.Or(
		cmp.Compare(b.worst(), a.worst()),
		cmp.Compare(len(b.verdicts), len(a.verdicts)),
		cmp.Compare(a.pattern, b.pattern),
		cmp.Compare(a.why, b.why),
	)
}

func (w *waiting) worst() verdict.Severity {
	worst := verdict.Notice
	for _, v := range w.verdicts {
		worst = max(worst, v.Severity)
	}
	return worst
}

// rules lists the rules that wait, the worst first.
func (w *waiting) rules() []string {
	worst := map[string]verdict.Severity{}
	var ids []string
	for _, v := range w.verdicts {
		if _, seen := worst[v.Rule.ID]; !seen {
			ids = append(ids, v.Rule.ID)
		}
		worst[v.Rule.ID] = max(worst[v.Rule.ID], v.Severity)
	}
	slices.SortFunc(ids, func(a, b string) int { return cmp.Or(cmp.Compare(worst[b], worst[a]), cmp.Compare(a, b)) })
	return ids
}

// waits lists the rules with the subjects that each waits on; for reasons,
// where the subject is not plain from the entry.
func (w *waiting) waits() []string {
	var lines []string
	for _, rule := range w.rules() {
		var subjects []string
		for _, v := range w.verdicts {
			if v.Rule.ID == rule && !slices.Contains(subjects, v.Subject) {
				subjects = append(subjects, v.Subject)
			}
		}
		lines = append(lines, rule+" on "+strings.Join(subjects, " and "))
	}
	return lines
}

// task writes one kind of entry to fill in.
func (t *recordText) task(w *waiting) {
	title := []span{in(strong, w.fields[0])}
	if len(w.fields) == 1 {
		title = append(title, txt(t.line(w.fields[0])))
	} else {
		title = []span{in(strong, w.pattern)}
	}
	if w.why != "" {
		title = append(title, txt(": "+w.why))
	}
	t.labelled(txt("[ ]"), 5, title...)
	if len(w.fields) > 1 {
		var places []string
		for _, field := range w.fields {
			_, which := patternOf(field)
			places = append(places, which+strings.ReplaceAll(t.line(field), " ", string(glue)))
		}
		t.hang(5, 5, txt("of "+strings.Join(places, ", ")))
	}
	t.hang(5, 7, in(faint, "for "+strings.Join(w.rules(), ", ")))
}

// line says where in the file an entry belongs, or stands as unknown.
func (t *recordText) line(field string) string {
	if t.src == nil {
		return ""
	}
	if at, ok := t.src.Places[field]; ok {
		return fmt.Sprintf(" (line %d, now unknown)", at.Start.Line)
	}
	for path := parent(field); path != ""; path = parent(path) {
		if at, ok := t.src.Places[path]; ok {
			return fmt.Sprintf(" (line %d)", at.Start.Line)
		}
	}
	return " (not in the record yet)"
}

// parent is the path one step up: of "a.b[2]" it is "a.b", of "a" nothing.
func parent(path string) string {
	return path[:max(strings.LastIndexAny(path, ".["), 0)]
}
