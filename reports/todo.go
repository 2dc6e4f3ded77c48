package reports

import (
	"cmp"
	"slices"
	"strings"

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

// task is one thing that is waited for: entries of the same kind in one or more
// parts of the record, or a reason that no entry cures.
type task struct {
	entries []entries // none for a reason
	whys    []string
	waits   []wait
}

// entries are those of one kind.
type entries struct {
	pattern string
	fields  []string // paths in the record
}

// todo sorts what is missing into entries to fill in and reasons that no entry
// cures; what the worst and the most wait for comes first.
func todo(waits []wait) (tasks, reasons []*task) {
	at := map[string]*task{}
	seen := map[string]bool{}
	for _, w := range waits {
		for _, gap := range w.missing {
			pattern := Pattern(gap.Field)
			key := pattern
			if pattern == "" {
				key = "\n" + gap.Why // no path is like that
			}
			t := at[key]
			if t == nil {
				t = &task{}
				at[key] = t
				if pattern == "" {
					reasons = append(reasons, t)
				} else {
					t.entries = []entries{{pattern: pattern}}
					tasks = append(tasks, t)
				}
			}
			t.waits = append(t.waits, w)
			if gap.Why != "" && !slices.Contains(t.whys, gap.Why) {
				t.whys = append(t.whys, gap.Why)
			}
			if pattern != "" && !seen[gap.Field] {
				seen[gap.Field] = true
				t.entries[0].fields = append(t.entries[0].fields, gap.Field)
			}
		}
	}
	slices.SortStableFunc(tasks, byUrgency)
	slices.SortStableFunc(reasons, byUrgency)
	return merge(tasks), reasons
}

func byUrgency(a, b *task) int {
	return cmp.Or(
		cmp.Compare(b.worst(), a.worst()),
		cmp.Compare(len(b.waits), len(a.waits)),
		cmp.Compare(a.pattern(), b.pattern()),
		slices.Compare(a.whys, b.whys),
	)
}

// merge joins the tasks that the same rules wait for in the same parts of the
// record, so that each part is named once.
func merge(tasks []*task) []*task {
	at := map[string]*task{}
	var merged []*task
	for _, t := range tasks {
		key := strings.Join(t.names(), " ") + "\n" + strings.Join(t.parts(), " ") + "\n" + strings.Join(t.whys, "\n")
		if first := at[key]; first != nil {
			first.entries = append(first.entries, t.entries...)
			continue
		}
		at[key] = t
		merged = append(merged, t)
	}
	return merged
}

// pattern is that of the first entries; none for a reason.
func (t *task) pattern() string {
	if len(t.entries) == 0 {
		return ""
	}
	return t.entries[0].pattern
}

// parts are the parts of the record that the entries lie in.
func (t *task) parts() []string {
	fields := t.entries[0].fields
	parts := make([]string, len(fields))
	for i, field := range fields {
		parts[i] = placeOf(field).part
	}
	return parts
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
	subjects := map[string][]subject{}
	seen := map[[2]string]bool{}
	for _, w := range t.waits {
		if key := [2]string{w.what, w.subject}; !seen[key] {
			seen[key] = true
			subjects[w.what] = append(subjects[w.what], subject{w.subject, ""})
		}
	}
	lines := t.names()
	for i, name := range lines {
		lines[i] = name + " on " + listed(subjects[name])
	}
	return lines
}
