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
	waits   []*wait
	rules   []waiting // what waits, each once
	worst   verdict.Severity
}

// waiting is a rule or figure that waits, with the worst that it waits for.
type waiting struct {
	what  string
	worst verdict.Severity
}

// entries are those of one kind.
type entries struct {
	pattern string
	fields  []string // paths in the record
	places  []place  // the same, taken apart
}

// list is a list of tasks as it grows.
type list struct {
	tasks, reasons []*task
	byPattern      map[string]*task
	byField        map[string]*task // of fields that are noted
	byWhy          map[string]*task
}

// todo sorts what is missing into entries to fill in and reasons that no entry
// cures; what the worst and the most wait for comes first.
func todo(waits []wait) (tasks, reasons []*task) {
	l := list{byPattern: map[string]*task{}, byField: map[string]*task{}, byWhy: map[string]*task{}}
	for i := range waits {
		for _, gap := range waits[i].missing {
			t := l.entry(gap.Field)
			if t == nil {
				t = l.reason(gap.Why)
			}
			t.add(&waits[i])
			if gap.Why != "" && !slices.Contains(t.whys, gap.Why) {
				t.whys = append(t.whys, gap.Why)
			}
		}
	}
	slices.SortStableFunc(l.tasks, byUrgency)
	slices.SortStableFunc(l.reasons, byUrgency)
	return merge(l.tasks), l.reasons
}

// entry returns the task of an entry, in which it is noted; nil for none.
func (l *list) entry(field string) *task {
	if t := l.byField[field]; t != nil || field == "" {
		return t
	}
	at := placeOf(field)
	if at.pattern == "" {
		return nil
	}
	t := l.byPattern[at.pattern]
	if t == nil {
		t = &task{entries: []entries{{pattern: at.pattern}}}
		l.byPattern[at.pattern] = t
		l.tasks = append(l.tasks, t)
	}
	first := &t.entries[0]
	first.fields, first.places = append(first.fields, field), append(first.places, at)
	l.byField[field] = t
	return t
}

func (l *list) reason(why string) *task {
	t := l.byWhy[why]
	if t == nil {
		t = &task{}
		l.byWhy[why] = t
		l.reasons = append(l.reasons, t)
	}
	return t
}

func (t *task) add(w *wait) {
	t.waits = append(t.waits, w)
	t.worst = max(t.worst, w.severity)
	for i := range t.rules {
		if t.rules[i].what == w.what {
			t.rules[i].worst = max(t.rules[i].worst, w.severity)
			return
		}
	}
	t.rules = append(t.rules, waiting{w.what, w.severity})
}

func byUrgency(a, b *task) int {
	return cmp.Or(
		cmp.Compare(b.worst, a.worst),
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
	places := t.entries[0].places
	parts := make([]string, len(places))
	for i := range places {
		parts[i] = places[i].part
	}
	return parts
}

// names lists what waits, the worst first.
func (t *task) names() []string {
	rules := slices.Clone(t.rules)
	slices.SortFunc(rules, func(a, b waiting) int { return cmp.Or(cmp.Compare(b.worst, a.worst), cmp.Compare(a.what, b.what)) })
	names := make([]string, len(rules))
	for i, r := range rules {
		names[i] = r.what
	}
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
