package reports

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// sarifSchema names the schema of the standard that the log follows.
const sarifSchema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"

// fingerprintName names the way fingerprints are made; another way gets another
// number.
const fingerprintName = "verdict/v1"

// sarif gathers what is listed once in a run, in the order that it is met: rules,
// documents and files. Results are written as they come.
type sarif struct {
	out       *sarifWriter
	o         Options
	version   string
	digest    string
	artifacts []sarifFile
	documents []sarifComponent
	described []sarifRule

	ruleAt     map[string]int    // by id
	documentAt map[string]int    // by id of the source
	fileAt     map[string]int    // by path
	issuers    map[string]string // by id of the source
}

// openSARIF renders a run in the Static Analysis Results Interchange Format, version
// 2.1.0 (OASIS). Breaches are results of the kind fail, what is undecided is open,
// waivers are suppressions. With Options.All what is met and what does not apply
// are results, too, in short: where and by which rule.
func openSARIF(w io.Writer, head verdict.Run, o Options) Stream {
	if o.Units == "" {
		o.Units = quantity.Metric
	}
	s := &sarif{
		out: newSARIFWriter(w), o: o, version: head.Version, digest: head.Rules,
		ruleAt: map[string]int{}, documentAt: map[string]int{}, fileAt: map[string]int{}, issuers: map[string]string{},
	}
	for _, source := range head.Sources {
		s.issuers[source.ID] = flow(source.Issuer)
	}
	return s
}

// Render leaves a record to Add: results refer by number to what the records
// before them brought.
func (s *sarif) Render(rec *verdict.Record, src *Source) (Chunk, error) {
	return Chunk{Counts: rec.Counts, rec: rec, src: src}, nil
}

// Add writes the results of a record.
func (s *sarif) Add(c Chunk) error {
	rec := c.rec
	file := s.file(rec.Path, rec.SHA256)
	for i := range rec.Verdicts {
		v := &rec.Verdicts[i]
		switch {
		case v.Outcome != verdict.Met && v.Outcome != verdict.NotApplicable:
			s.out.result(s.result(v, rec.Job, file, c.src))
		case s.o.All:
			s.out.result(s.inOrder(v, file))
		}
	}
	return s.out.err
}

// Close writes what was gathered, and what is told of the run as a whole.
func (s *sarif) Close(rest *verdict.Run) error {
	call := s.invocation(rest) // may list further files
	tool := sarifComponent{
		Name: "driploop", Version: numeric(s.version), Rules: s.described,
		ShortDescription: &sarifText{Text: "Judges records of direct-current installations on small craft by rules that each cite a source."},
		FullDescription:  &sarifText{Text: Caution},
	}
	for i, t := range s.documents {
		tool.Supported = append(tool.Supported, sarifReference{Name: t.Name, Index: i})
	}
	return s.out.close(sarifRun{
		Tool: sarifTool{Driver: tool}, Invocations: []sarifInvocation{call}, Artifacts: s.artifacts, Taxonomies: s.documents,
		Properties: sarifRunMore{Rules: s.digest, Caution: Caution},
	})
}

// inOrder is the result of a verdict that is met or does not apply. Nobody looks
// for its lines or follows it from run to run, and such verdicts are most.
func (s *sarif) inOrder(v *verdict.Verdict, file sarifArtifact) sarifResult {
	return sarifResult{
		RuleID: v.Rule.ID, RuleIndex: s.rule(v.Rule, v.Sources), Kind: sarifKind(v.Outcome), Level: "none",
		Message:   sarifText{Text: sarifMessage(v, v.Show(s.o.Units))},
		Locations: []sarifLocation{located(file, v.Subject, placed(verdict.Range{Start: v.At.Start}), nil)},
	}
}

func (s *sarif) result(v *verdict.Verdict, job string, file sarifArtifact, src *Source) sarifResult {
	show := v.Show(s.o.Units)
	rule := s.rule(v.Rule, v.Sources)
	r := sarifResult{
		RuleID: v.Rule.ID, RuleIndex: rule, Kind: sarifKind(v.Outcome), Level: "none",
		Message:      sarifText{Text: sarifMessage(v, show)},
		Locations:    []sarifLocation{located(file, v.Subject, placed(v.At), src)},
		Fingerprints: map[string]string{fingerprintName: v.Fingerprint(job)},
		Taxa:         s.taxaBeside(rule, v.Sources),
		Properties: &sarifResultMore{
			Severity: v.Severity.String(), Outcome: string(v.Outcome), Job: job,
			Figures: printed(v.Figures, show), Limit: printed(v.Limit, show), Remedy: v.Text(flow(v.Remedy), show),
		},
	}
	for _, gap := range v.Missing {
		r.Properties.Missing = append(r.Properties.Missing, gap.String())
	}
	if r.Kind == "fail" {
		rank := sarifRank(v.Severity)
		r.Level, r.Rank = sarifLevel(v.Severity), &rank
	}
	for i, other := range v.Related {
		at := located(file, other.Subject, other.At, src)
		at.ID, at.Message = &i, &sarifText{Text: sentence(capital(other.Role + ": " + sarifLiteral(other.Subject)))}
		r.Related = append(r.Related, at)
	}
	if v.Waiver != nil {
		r.Suppressions = []sarifSuppression{suppression(v, file, src)}
	}
	return r
}

// placed is where a verdict stands; without a place, the beginning of the file.
func placed(at verdict.Range) verdict.Range {
	if at.Start.Line == 0 {
		at.Start = verdict.Position{Line: 1, Column: 1}
	}
	return at
}

// suppression is a waiver. That of a danger is left under review, since a result
// is hidden only by an accepted one.
func suppression(v *verdict.Verdict, file sarifArtifact, src *Source) sarifSuppression {
	w := v.Waiver
	s := sarifSuppression{Kind: "inSource", Status: "accepted", Justification: fmt.Sprintf("Waived by %s until %s: %s", w.By, w.Until, w.Reason)}
	if v.Severity == verdict.Danger {
		s.Status = "underReview"
	}
	if w.At.Start.Line > 0 {
		at := located(file, w.Path, w.At, src)
		s.Location = &at
	}
	return s
}

// sarifKind is the kind of result that an outcome is.
func sarifKind(o verdict.Outcome) string {
	switch o {
	case verdict.Met:
		return "pass"
	case verdict.Undecided:
		return "open"
	case verdict.NotApplicable:
		return "notApplicable"
	}
	return "fail"
}

// sarifLevel is the level of a severity: what can kill or maim is an error.
func sarifLevel(s verdict.Severity) string {
	switch s {
	case verdict.Danger, verdict.Warning:
		return "error"
	case verdict.Caution:
		return "warning"
	}
	return "note"
}

// sarifRank keeps apart the severities that share a level; 100 is the highest rank.
func sarifRank(s verdict.Severity) float64 { return 25 * float64(s+1) }

// sarifMessage is what a verdict says, with its remedy, as sentences.
func sarifMessage(v *verdict.Verdict, show func(verdict.Figure) string) string {
	text := sentence(capital(says(v, show)))
	if v.Outcome == verdict.NotApplicable {
		text = "Does not apply: " + sentence(says(v, show))
	}
	if remedy := v.Text(flow(v.Remedy), show); remedy != "" {
		text += " " + sentence(capital(remedy))
	}
	return sarifLiteral(text)
}

// sarifLiteral keeps a text from being read as anything else: braces would be
// places for arguments, and "[text](target)" a link.
func sarifLiteral(s string) string {
	return strings.NewReplacer("{", "{{", "}", "}}", "](", "] (").Replace(s)
}

// sentence ends a text with a full stop.
func sentence(s string) string {
	if s == "" || strings.ContainsAny(s[len(s)-1:], ".!?") {
		return s
	}
	return s + "."
}

// numeric writes a version so that it can be compared: "v1.2.0" as "1.2.0", and
// that of a build without one as the lowest.
func numeric(version string) string {
	if bare := strings.TrimPrefix(version, "v"); bare != "" && bare[0] >= '0' && bare[0] <= '9' {
		return bare
	}
	return "0.0.0-" + version
}

// invocation tells whether every file could be judged, what is wrong with the
// others, and what a reader has to know of the run.
func (s *sarif) invocation(run *verdict.Run) sarifInvocation {
	call := sarifInvocation{Successful: len(run.Faults) == 0}
	if !s.o.At.IsZero() {
		call.EndTimeUTC = s.o.At.UTC().Format(time.RFC3339)
	}
	for _, f := range run.Faults {
		at := located(s.file(f.Path, ""), "", verdict.Range{Start: f.At, End: f.End}, s.o.Sources[f.Path])
		call.Notifications = append(call.Notifications, sarifNotification{
			Level: "error", Message: sarifText{Text: sarifLiteral(sentence(capital(f.Says)))}, Locations: []sarifLocation{at},
		})
	}
	for _, note := range run.Notes {
		call.Notifications = append(call.Notifications, sarifNotification{Level: "note", Message: sarifText{Text: sarifLiteral(sentence(capital(note)))}})
	}
	return call
}

// tags are the words by which a rule can be filtered: its topic, and the practice
// sets that bring it.
func tags(r *verdict.Rule) []string {
	topic, _, _ := strings.Cut(r.ID, "/")
	return slices.Concat([]string{topic}, r.Sets())
}
