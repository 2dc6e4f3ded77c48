package reports

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"driploop/model/verdict"
)

// breaches writes what to fix, worst first. The verdicts of one rule stand
// together, so that what they share is said once.
func (t *recordText) breaches(all []*verdict.Verdict) {
	t.heading("WHAT TO FIX FIRST", severityCounts(all))
	for i, group := range byRule(all) {
		if i > 0 {
			t.blank()
		}
		t.finding(group)
	}
}

// severities lists the severities, worst first.
func severities() []verdict.Severity {
	return []verdict.Severity{verdict.Danger, verdict.Warning, verdict.Caution, verdict.Notice}
}

func severityCounts(all []*verdict.Verdict) string {
	by := map[verdict.Severity]int{}
	for _, v := range all {
		by[v.Severity]++
	}
	return listSeverities(by)
}

func listSeverities(by map[verdict.Severity]int) string {
	var parts []string
	for _, s := range severities() {
		if n := by[s]; n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, s))
		}
	}
	return strings.Join(parts, ", ")
}

// byRule groups verdicts by severity and rule: worst severity first, then by
// the first place in the record.
func byRule(all []*verdict.Verdict) [][]*verdict.Verdict {
	type key struct {
		severity verdict.Severity
		rule     string
	}
	at := map[key]int{}
	var groups [][]*verdict.Verdict
	for _, v := range all {
		k := key{v.Severity, v.Rule.ID}
		i, seen := at[k]
		if !seen {
			i = len(groups)
			at[k] = i
			groups = append(groups, nil)
		}
		groups[i] = append(groups[i], v)
	}
	slices.SortStableFunc(groups, func(a, b []*verdict.Verdict) int { return int(b[0].Severity) - int(a[0].Severity) })
	return groups
}

// finding writes the breaches of one rule.
func (t *recordText) finding(group []*verdict.Verdict) {
	first := group[0]
	word := in(severityInk(first.Severity), strings.ToUpper(first.Severity.String()))
	t.entry(word, in(strong, flow(first.Rule.Title)))
	t.entry(in(faint, "rule"), txt(first.Rule.ID))
	sharedRemedy := t.shared(group, func(v *verdict.Verdict) string { return t.say(v, v.Remedy) })
	sharedSources := t.shared(group, t.sourceKey)
	for i, v := range group {
		if i > 0 {
			t.blank()
		}
		t.place(v)
		if !sharedSources {
			t.sources(v)
		}
		if !sharedRemedy {
			t.entry(in(faint, "remedy"), txt(t.say(v, v.Remedy)))
		}
	}
	if len(group) > 1 {
		t.blank()
	}
	if why := flow(first.Rule.Why); why != "" {
		t.entry(in(faint, "why"), txt(why))
	}
	if sharedSources {
		t.sources(first)
	}
	if sharedRemedy && first.Remedy != "" {
		t.entry(in(faint, "remedy"), txt(t.say(first, first.Remedy)))
	}
}

// place writes where a breach stands, the line of the record, and what was
// found there.
func (t *recordText) place(v *verdict.Verdict) {
	t.entry(in(faint, "place"), txt(t.where(v)+", "+v.Subject))
	t.excerpt(t.src, v.At, severityInk(v.Severity))
	t.entry(in(faint, "finding"), txt(t.say(v, v.Says)))
	if v.Change != "" {
		t.entry(in(faint, "change"), txt(string(v.Change)+" since "+t.rec.Since))
	}
	if r := v.Recast; r != nil {
		way := "lowered"
		if v.Severity > r.From {
			way = "raised"
		}
		t.entry(in(faint, "level"), txt(fmt.Sprintf("severity %s from %s by %s: %s", way, r.From, r.Where, flow(r.Why))))
	}
	for _, limit := range v.Limit {
		if line := t.against(v, limit); line != "" {
			t.entry(in(faint, "figure"), txt(line))
		}
	}
}

// against sets a figure against its limit where the words of the finding do
// not.
func (t *recordText) against(v *verdict.Verdict, limit verdict.Figure) string {
	show := t.show(v)
	if holds(t.say(v, v.Says), show(limit)) {
		return ""
	}
	line := "limit " + show(limit)
	for _, f := range v.Figures {
		if f.Name == limit.Name {
			line = show(f) + ", " + line
		}
	}
	return spaced(limit.Name) + " " + line
}

// holds tells whether a text has a part that is not within a longer word or
// number.
func holds(text, part string) bool {
	before, after, found := strings.Cut(text, part)
	if !found || part == "" {
		return false
	}
	last, _ := utf8.DecodeLastRuneInString(before)
	next, _ := utf8.DecodeRuneInString(after)
	if !isWordRune(last) && !isWordRune(next) {
		return true
	}
	return holds(text[len(before)+1:], part)
}

func isWordRune(r rune) bool {
	return r != utf8.RuneError && (unicode.IsLetter(r) || unicode.IsDigit(r) || r == '.')
}

// spaced writes the name of a figure as words.
func spaced(name string) string { return strings.ReplaceAll(name, "_", " ") }

// shared tells whether all verdicts of a group have the same text.
func (t *recordText) shared(group []*verdict.Verdict, text func(*verdict.Verdict) string) bool {
	for _, v := range group[1:] {
		if text(v) != text(group[0]) {
			return false
		}
	}
	return true
}
