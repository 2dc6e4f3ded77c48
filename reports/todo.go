package reports

import (
	"cmp"
	"slices"

	"driploop/model/verdict"
)

// wait is something that cannot be said for want of something: a rule that
// waits for entries of the record, or a figure.
type wait struct {
	what     string // id of the rule, or name of the figure
	subject  string
	severity verdict.Severity
	missing  []verdict.Gap
}

// task is one thing that is waited for: entries of the same kind, or a reason
// that no entry cures.
type task struct {
	pattern string // of the entries; empty for a reason
	why     string
	fields  []string
	waits   []wait
	seen    map[string]bool // of fields
}

// todo sorts what is missing into entries of the same kind and reasons that no
// entry cures; what the worst and the most wait for comes first.
func todo(waits []wait) (tasks, reasons []*task) {
	at := map[[2]string]*task{}
	for _, w := range waits {
		for _, gap := range w.missing {
			pattern, _ := patternOf(gap.Field)
			key := [2]string{pattern, gap.Why}
			t := at[key]
			if t == nil {
				t = &task{pattern: pattern, why: gap.Why, seen: map[string]bool{}}
				at[key] = t
				if pattern == "" {
					reasons = append(reasons, t)
				} else {
					tasks = append(tasks, t)
				}
			}
			if !t.seen[gap.Field] {
				t.seen[gap.Field] = true
				t.fields = append(t.fields, gap.Field)
			}
			t.waits = append(t.waits, w)
		}
	}
	slices.SortStableFunc(tasks, byUrgency)
	slices.SortStableFunc(reasons, byUrgency)
	return tasks, reasons
}

func byUrgency(a, b *task) int {
	return cmp.Or(
		cmp.Compare(b.worst(), a.worst()),
		cmp.Compare(len(b.waits), len(a.waits)),
		cmp.Compare(a.pattern, b.pattern),
		cmp.Compare(a.why, b.why),
	)
}

func (t *task) worst() verdict.Severity {
	worst := verdict.Notice
	for _, w := range t.waits {
		worst = max(worst, w.severity)
	}
	return worst
}

// names lists what waits, the worst first.
func (t *task) names() []string {
	worst := map[string]verdict.Severity{}
	var names []string
	for _, w := range t.waits {
		if _, seen := worst[w.what]; !seen {
			names = append(names, w.what)
		}
		worst[w.what] = max(worst[w.what], w.severity)
	}
	slices.SortFunc(names, func(a, b string) int { return cmp.Or(cmp.Compare(worst[b], worst[a]), cmp.Compare(a, b)) })
	return names
}

// namesAndSubjects lists what waits with the subjects of each; for reasons,
// where the subject is not plain from the entry.
func (t *task) namesAndSubjects() []string {
	subjects := map[string][]string{}
	for _, w := range t.waits {
		if !slices.Contains(subjects[w.what], w.subject) {
			subjects[w.what] = append(subjects[w.what], w.subject)
		}
	}
	var lines []string
	for _, name := range t.names() {
		lines = append(lines, name+" on "+enumerate(subjects[name], "and"))
	}
	return lines
}
