package reports

import (
	"fmt"
	"strings"

	"driploop/model/verdict"
)

// waived writes the breaches that someone let stand. Those of the severity
// danger are shown whole: a waiver does not hide them.
func (t *recordText) waived(all []*verdict.Verdict) {
	t.heading("WAIVED", verdictCount(len(all)))
	for i, v := range all {
		if i > 0 {
			t.blank()
		}
		if v.Severity == verdict.Danger {
			t.finding([]*verdict.Verdict{v})
		} else {
			word := in(severityInk(v.Severity), strings.ToUpper(v.Severity.String()))
			t.entry(word, in(strong, flow(v.Rule.Title)))
			t.entry(in(faint, "rule"), txt(v.Rule.ID))
			t.entry(in(faint, "place"), txt(t.where(v)+", "+v.Subject))
			t.entry(in(faint, "finding"), txt(t.say(v, v.Says)))
		}
		if w := v.Waiver; w != nil {
			t.entry(in(faint, "waived"), txt(fmt.Sprintf("by %s until %s: %s", w.By, w.Until, w.Reason)))
		}
	}
}

// met lists what the rules found in order, rule by rule.
func (t *recordText) met(all []*verdict.Verdict) {
	if len(all) == 0 {
		return
	}
	t.heading("MET", verdictCount(len(all)))
	for _, group := range byRule(all) {
		var subjects []subject
		for _, v := range group {
			subjects = append(subjects, subject{v.Subject, t.measured(v)})
		}
		t.hang(0, 2, in(strong, group[0].Rule.ID+":"), txt(" "+listed(subjects)))
	}
}

// byRule says of every rule how many parts of the record it looked at.
func (t *recordText) byRule() {
	if len(t.rec.ByRule) == 0 {
		return
	}
	t.heading("WHAT EACH RULE LOOKED AT", plural(len(t.rec.ByRule), "rule"))
	for _, r := range t.rec.ByRule {
		text := " nothing that it is about"
		if r.Counts.Total() > 0 {
			text = " " + countText(r.Counts)
		}
		t.hang(0, 2, in(strong, r.Rule.ID+":"), txt(text))
	}
}

// subject is one part of a record with what is to be said of it.
type subject struct{ path, remark string }

// listed lists subjects with the name of their collection said once:
// "conductors P1, N1".
func listed(subjects []subject) string {
	var b strings.Builder
	last := ""
	for i, s := range subjects {
		collection, name, found := strings.Cut(s.path, ".")
		switch {
		case !found:
			collection, name = "", s.path
		case collection != last:
			name = collection + " " + name
		}
		if i > 0 && collection != last {
			b.WriteString("; ")
		} else if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(name + s.remark)
		last = collection
	}
	return b.String()
}

// measured gives the figures of a verdict and their limits in brackets.
func (t *recordText) measured(v *verdict.Verdict) string {
	parts := make([]string, 0, len(v.Figures)+len(v.Limit))
	show := t.show(v)
	for _, f := range v.Figures {
		parts = append(parts, spaced(f.Name)+" "+show(f))
	}
	for _, l := range v.Limit {
		parts = append(parts, "limit "+show(l))
	}
	if len(parts) == 0 {
		return ""
	}
	return " (" + strings.Join(parts, ", ") + ")"
}

// notApplicable lists what does not apply, rule by rule with the reason.
func (t *recordText) notApplicable(all []*verdict.Verdict) {
	if len(all) == 0 {
		return
	}
	t.heading("NOT APPLICABLE", verdictCount(len(all)))
	for _, group := range byRule(all) {
		var reasons []string
		subjects := map[string][]subject{}
		for _, v := range group {
			why := t.say(v, v.Says)
			if subjects[why] == nil {
				reasons = append(reasons, why)
			}
			subjects[why] = append(subjects[why], subject{v.Subject, ""})
		}
		for _, why := range reasons {
			t.hang(0, 2, in(strong, group[0].Rule.ID+":"), txt(" "+why))
			t.hang(2, 2, in(faint, "not "+listed(subjects[why])))
		}
	}
}

// countText says how the verdicts add up.
func countText(c verdict.Counts) string {
	return fmt.Sprintf("%d = %d met + %d breached + %d undecided + %d not applicable + %d waived",
		c.Total(), c[verdict.Met], c[verdict.Breach], c[verdict.Undecided], c[verdict.NotApplicable], c[verdict.Waived])
}

// writeTotal adds up several records.
func (s *textStream) writeTotal(faults []verdict.Fault) {
	s.blank()
	s.hang(0, 0, in(faint, strings.Repeat("═", s.width)))
	s.blank()
	s.entry(in(strong, "total"), txt(plural(s.records, "record")+" judged, "+plural(unusable(faults), "file")+" unusable"))
	s.entry(in(strong, "verdicts"), txt(countText(s.total)))
}

// unusable counts the files that have faults.
func unusable(faults []verdict.Fault) int {
	files := map[string]bool{}
	for _, f := range faults {
		files[f.Path] = true
	}
	return len(files)
}

// writeFaults lists what keeps files from being judged.
func writeFaults(p *page, faults []verdict.Fault, o Options, after bool) {
	if after {
		p.heading("WHAT COULD NOT BE USED", plural(unusable(faults), "file"))
	}
	for _, f := range faults {
		place := f.Path
		if f.At.Line > 0 {
			place = fmt.Sprintf("%s:%d:%d", f.Path, f.At.Line, f.At.Column)
		}
		p.hang(0, 2, in(strong, place+":"), txt(" "+f.Says))
		p.excerpt(o.Sources[f.Path], verdict.Range{Start: f.At, End: f.End}, dangerInk)
	}
}
