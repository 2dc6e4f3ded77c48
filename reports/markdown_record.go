package reports

import (
	"fmt"
	"strings"

	"driploop/model/verdict"
)

// markdownRecord writes the part of one record.
type markdownRecord struct {
	*markdown
	rec *verdict.Record
	src *Source
}

func (m *markdownRecord) outcome(o verdict.Outcome) (some []*verdict.Verdict) {
	for i := range m.rec.Verdicts {
		if v := &m.rec.Verdicts[i]; v.Outcome == o {
			some = append(some, v)
		}
	}
	return some
}

func (m *markdownRecord) write() {
	breaches, open, waived := m.outcome(verdict.Breach), m.outcome(verdict.Undecided), m.outcome(verdict.Waived)
	if len(breaches)+len(open)+len(waived) == 0 && !m.o.All {
		return
	}
	m.line("### %s\n", markdownCode(m.rec.Path))
	if about := m.about(); about != "" {
		m.line("%s\n", about)
	}
	m.breaches(breaches)
	m.open(open)
	m.waived(waived)
	if m.o.All {
		m.listed("Met", m.outcome(verdict.Met))
		m.listed("Not applicable", m.outcome(verdict.NotApplicable))
	}
}

func (m *markdownRecord) about() string {
	var parts []string
	for _, text := range []string{m.rec.Job, m.rec.Title, m.rec.Vessel} {
		if text != "" {
			parts = append(parts, markdownCode(text))
		}
	}
	return strings.Join(append(parts, "judged by "+markdownText(sets(m.rec.Practice))), ", ")
}

// breaches writes what to fix, worst first; what can harm nobody is folded.
func (m *markdownRecord) breaches(all []*verdict.Verdict) {
	var mild []*verdict.Verdict
	for _, group := range byRule(all) {
		if group[0].Severity < verdict.Warning {
			mild = append(mild, group...)
			continue
		}
		m.finding(group)
	}
	if len(mild) > 0 {
		m.fold(severityCounts(mild), func() {
			for _, group := range byRule(mild) {
				m.finding(group)
			}
		})
	}
}

// shownPlaces is how many places of one finding are shown before the others are
// folded.
const shownPlaces = 5

// finding writes the breaches of one rule.
func (m *markdownRecord) finding(group []*verdict.Verdict) {
	first := group[0]
	m.line("**%s: %s** (%s)\n", strings.ToUpper(first.Severity.String()), markdownText(flow(first.Rule.Title)), markdownCode(first.Rule.ID))
	shown := min(len(group), shownPlaces, m.detail.places)
	for _, v := range group[:shown] {
		m.place(v)
	}
	if more := group[shown:]; len(more) > 0 && m.detail.places > shown {
		listed := min(len(more), m.detail.places-shown)
		m.line("")
		m.fold(plural(len(more), "more place"), func() {
			for _, v := range more[:listed] {
				m.place(v)
			}
			if left := len(more) - listed; left > 0 {
				m.line("- and %s", plural(left, "more place"))
			}
		})
	} else if len(more) > 0 {
		m.line("- and %s", plural(len(more), "more place"))
	}
	m.line("")
	if m.detail.why {
		m.fold("why, and where that is written", func() { m.why(first) })
	}
}

func (m *markdownRecord) place(v *verdict.Verdict) {
	show := v.Show(m.o.Units)
	text := fmt.Sprintf("- %s, line %d: %s", markdownCode(v.Subject), v.At.Start.Line, sentence(markdownSays(v, v.Says, show)))
	if v.Remedy != "" {
		text += " " + sentence(markdownSays(v, v.Remedy, show))
	}
	m.line("%s", text)
}

func (m *markdownRecord) why(v *verdict.Verdict) {
	m.line("%s\n", markdownText(flow(v.Rule.Why)))
	for _, c := range v.Sources {
		text := document(c)
		if c.Clause != "" {
			text += " " + clause(c)
		}
		m.line("- %s", markdownText(text))
	}
}

// open writes what could not be decided, as entries to fill in.
func (m *markdownRecord) open(all []*verdict.Verdict) {
	if len(all) == 0 {
		return
	}
	waits := make([]wait, 0, len(all))
	for _, v := range all {
		waits = append(waits, wait{what: v.Rule.ID, subject: v.Subject, severity: v.Severity, missing: v.Missing})
	}
	tasks, reasons := todo(waits)
	m.fold(verdictCount(len(all))+" undecided: "+plural(len(tasks), "kind")+" of entry to fill in", func() {
		for i, t := range tasks {
			if i == m.detail.tasks {
				m.line("- and %d more", len(tasks)-i)
				break
			}
			m.line("- [ ] %s", m.task(t))
		}
		for i, r := range reasons {
			if i == m.detail.tasks {
				m.line("- and %s", plural(len(reasons)-i, "more reason"))
				break
			}
			m.line("- no entry would help: %s, for %s", markdownText(strings.Join(r.whys, "; ")), markdownText(strings.Join(r.names(), ", ")))
		}
	})
}

// task names entries to fill in, where, and the rules that wait for them.
func (m *markdownRecord) task(t *task) string {
	var names []string
	one := len(t.entries[0].fields) == 1
	for _, e := range t.entries {
		if one {
			names = append(names, markdownCode(e.fields[0]))
		} else {
			names = append(names, markdownCode(e.pattern))
		}
	}
	text := strings.Join(names, ", ")
	if one {
		text += m.src.lineOf(t.entries[0].fields[0])
	} else {
		var parts []string
		for _, at := range t.entries[0].places {
			parts = append(parts, at.name)
		}
		text += " of " + markdownCode(strings.Join(parts, ", "))
	}
	if len(t.whys) > 0 {
		text += ": " + markdownText(strings.Join(t.whys, "; "))
	}
	return text + ", for " + markdownText(strings.Join(t.names(), ", "))
}

// waived writes the breaches that someone let stand. A danger is not folded: a
// waiver does not hide it.
func (m *markdownRecord) waived(all []*verdict.Verdict) {
	var mild []*verdict.Verdict
	for _, v := range all {
		if v.Severity == verdict.Danger {
			m.line("**WAIVED DANGER: %s** (%s)\n", markdownText(flow(v.Rule.Title)), markdownCode(v.Rule.ID))
			m.waiver(v)
			m.line("")
		} else {
			mild = append(mild, v)
		}
	}
	if len(mild) > 0 {
		m.fold(fmt.Sprintf("%d waived", len(mild)), func() {
			for _, v := range mild {
				m.waiver(v)
			}
		})
	}
}

func (m *markdownRecord) waiver(v *verdict.Verdict) {
	m.place(v)
	m.line("  - %s", markdownCode(waivedText(v)))
}

// listed names the subjects of verdicts by rule.
func (m *markdownRecord) listed(title string, all []*verdict.Verdict) {
	if len(all) == 0 {
		return
	}
	m.fold(fmt.Sprintf("%s: %s", title, verdictCount(len(all))), func() {
		for _, group := range byRule(all) {
			subjects := make([]subject, 0, len(group))
			for _, v := range group {
				subjects = append(subjects, subject{path: v.Subject})
			}
			m.line("- %s: %s", markdownCode(group[0].Rule.ID), markdownCode(listed(subjects)))
		}
	})
}
