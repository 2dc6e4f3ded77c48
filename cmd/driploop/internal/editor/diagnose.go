package editor

import (
	"strings"

	"driploop/model/record"
	"driploop/model/verdict"
)

// diagnose publishes what is wrong with a text, unless a newer one has come.
func (s *server) diagnose(d *document) {
	s.diagnosing.Lock()
	defer s.diagnosing.Unlock()
	if !s.current(d) {
		return
	}
	d.solve()
	if !s.current(d) {
		return
	}
	all := []diagnostic{}
	for _, f := range d.faults {
		all = append(all, diagnostic{Range: lspRange(d.lines, f.At), Severity: severityError, Source: "driploop", Message: f.Says})
	}
	if len(d.faults) == 0 {
		judged, err := s.judged(d)
		if err != nil {
			all = append(all, diagnostic{Severity: severityError, Source: "driploop", Message: err.Error()})
		} else {
			all = append(all, d.breaches(judged)...)
		}
	}
	if s.current(d) {
		// An editor that has gone cannot be told anything.
		_ = s.tell("textDocument/publishDiagnostics", publishDiagnostics{URI: d.uri, Version: d.version, Diagnostics: all})
	}
}

// judged is the text with its verdicts, judged once.
func (s *server) judged(d *document) (*verdict.Record, error) {
	d.judging.Lock()
	defer d.judging.Unlock()
	if d.verdicts != nil || d.analysis == nil {
		return d.verdicts, nil
	}
	got, err := s.program.Judge(d.path(), []byte(d.text), d.record, d.analysis)
	d.verdicts = got
	return got, err
}

// breaches are the diagnostics of a record that could be judged. What is
// undecided is told in one line, for there is much of it until a record is whole.
func (d *document) breaches(r *verdict.Record) []diagnostic {
	var all []diagnostic
	open := 0
	for i := range r.Verdicts {
		v := &r.Verdicts[i]
		switch v.Outcome {
		case verdict.Breach:
			all = append(all, d.breach(v))
		case verdict.Undecided:
			open++
		}
	}
	if open > 0 {
		top := textRange{End: position{Character: 1}}
		all = append(all, diagnostic{
			Range: top, Severity: severityHint, Source: "driploop", Code: "undecided",
			Message: "some rules cannot be decided yet; driploop check lists the entries that they wait for",
		})
	}
	return all
}

func (d *document) breach(v *verdict.Verdict) diagnostic {
	show := v.Show("")
	one := diagnostic{
		Range: lspRange(d.lines, v.At), Severity: lspSeverity(v.Severity), Source: "driploop", Code: v.Rule.ID,
		Message: v.Rule.Title + ": " + v.Text(v.Says, show) + ". " + v.Text(v.Remedy, show),
	}
	for _, f := range v.Figures {
		if path, ok := d.named(f.Text); ok && path != record.PartOf(v.Subject) {
			one.Related = append(one.Related, related{
				Location: location{URI: d.uri, Range: lspRange(d.lines, d.record.Places.At(path))},
				Message:  strings.ReplaceAll(f.Name, "_", " "),
			})
		}
	}
	return one
}

func lspSeverity(s verdict.Severity) int {
	switch s {
	case verdict.Danger:
		return severityError
	case verdict.Warning, verdict.Caution:
		return severityWarning
	}
	return severityInfo
}
