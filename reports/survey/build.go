package survey

import (
	"fmt"
	"strings"
	"time"

	"driploop/model/quantity"
	"driploop/model/verdict"
	"driploop/reports"
	"driploop/reports/diagram"
)

// Build gathers a report.
func Build(in Input) *Survey {
	if in.Units == "" {
		in.Units = quantity.Both
	}
	b := &builder{Input: in, anchors: map[string]int{}}
	b.diagram = diagram.Lay(in.Record, in.Judged.Verdicts, diagram.Options{Units: drawn(in.Units), Embedded: true})
	b.circuits = reports.CircuitsOf(in.Record, in.Analysis, reports.Options{
		Units: in.Units, Sources: map[string]*reports.Source{in.Record.Name: in.Source},
	})
	b.schedule = b.scheduled()
	breaches, open, waived := b.outcome(verdict.Breach), b.outcome(verdict.Undecided), b.outcome(verdict.Waived)
	s := &Survey{
		Title:     "Survey report: " + b.name(),
		Name:      b.name(),
		Verdict:   headline(breaches, open, waived, in.Judged.Counts),
		Counts:    counts(in.Judged.Counts),
		Facts:     b.facts(),
		Findings:  b.groups("fault", breaches),
		Waived:    b.groups("waived", waived),
		Questions: b.questions(reports.OpenQuestions(open, b.Source)),
		Diagram:   b.diagram,
		Schedule:  b.schedule,
		Coverage:  b.coverage(),
		Cautions:  cautions(),
		Origin:    b.origin(),
	}
	for _, note := range in.Notes {
		s.Notes = append(s.Notes, reports.Plain(note))
	}
	return s
}

// drawn are the units of the diagram: two on each line would crowd it.
func drawn(s quantity.System) quantity.System {
	if s == quantity.Both {
		return quantity.Metric
	}
	return s
}

type builder struct {
	Input
	diagram  *diagram.Diagram
	circuits *reports.Circuits
	schedule Schedule
	anchors  map[string]int
}

// outcome returns the verdicts of one outcome, in the order of the record.
func (b *builder) outcome(o verdict.Outcome) []*verdict.Verdict {
	var some []*verdict.Verdict
	for i := range b.Judged.Verdicts {
		if v := &b.Judged.Verdicts[i]; v.Outcome == o {
			some = append(some, v)
		}
	}
	return some
}

// anchor makes an id that no other part of the report has.
func (b *builder) anchor(id string) string {
	b.anchors[id]++
	if n := b.anchors[id]; n > 1 {
		return fmt.Sprintf("%s-%d", id, n)
	}
	return id
}

// name is that of the job, or of its file.
func (b *builder) name() string {
	job := strings.Trim(b.Judged.Job+", "+b.Judged.Title, ", ")
	if job == "" {
		job = b.Judged.Path
	}
	return reports.Plain(job)
}

func headline(breaches, open, waived []*verdict.Verdict, c verdict.Counts) Headline {
	rest := ""
	switch n := len(open); {
	case n == 1:
		rest = " 1 verdict could not be decided for want of something in the record."
	case n > 1:
		rest = fmt.Sprintf(" %d verdicts could not be decided for want of something in the record.", n)
	}
	switch {
	case len(breaches) > 0:
		return Headline{reports.Plural(len(breaches), "fault") + " found: " + reports.SeverityCounts(breaches) + "." + rest, worst(breaches).String()}
	case c[verdict.Met] == 0 && len(open) == 0 && len(waived) == 0:
		return Headline{"Nothing was judged: no rule applies to what the record holds.", "open"}
	case c[verdict.Met] == 0 && len(open) > 0:
		return Headline{"No fault found, but nothing could be shown to be in order either." + rest, "open"}
	case len(open) > 0:
		return Headline{"No fault found, as far as it could be decided." + rest, "open"}
	case len(waived) > 0:
		return Headline{"No fault found but those that are waived: " + reports.SeverityCounts(waived) + ".", worst(waived).String()}
	}
	return Headline{"No fault found, and nothing left undecided.", "clear"}
}

func worst(all []*verdict.Verdict) verdict.Severity {
	var w verdict.Severity
	for _, v := range all {
		w = max(w, v.Severity)
	}
	return w
}

func counts(c verdict.Counts) []Count {
	means := map[verdict.Outcome]string{
		verdict.Met:           "the record shows what the rule asks",
		verdict.Breach:        "the record shows otherwise",
		verdict.Undecided:     "the record does not say enough",
		verdict.NotApplicable: "the rule is not about this part",
		verdict.Waived:        "breached, and someone lets it stand",
	}
	words := map[verdict.Outcome]string{
		verdict.Met: "met", verdict.Breach: "breached", verdict.Undecided: "undecided", verdict.NotApplicable: "not applicable", verdict.Waived: "waived",
	}
	out := make([]Count, 0, len(means))
	for _, o := range []verdict.Outcome{verdict.Breach, verdict.Waived, verdict.Undecided, verdict.Met, verdict.NotApplicable} {
		out = append(out, Count{o, words[o], c[o], means[o]})
	}
	return out
}

// facts lists what the record says of job and vessel.
func (b *builder) facts() []reports.Labelled {
	var all []reports.Labelled
	add := func(label, text string) {
		if text != "" {
			all = append(all, reports.Labelled{Label: label, Text: reports.Plain(text)})
		}
	}
	r := b.Record
	add("Yard", r.Job.Yard.V)
	add("Vessel", r.Vessel.Name.V)
	add("Hull", strings.Trim(r.Vessel.Hull.V+", "+b.measure(r.Vessel.Length.Get()), ", "))
	add("Propulsion", r.Vessel.Propulsion.V)
	add("System", strings.Trim(b.measure(r.Vessel.System.Get())+", "+r.Vessel.Earthing.V, ", "))
	if day, ok := r.Job.Completed.Get(); ok {
		add("Completed", day.Format(time.DateOnly))
	}
	if day, ok := r.SignOff.On.Get(); ok {
		add("Signed off", strings.TrimSuffix(day.Format(time.DateOnly)+" by "+r.SignOff.By.V, " by "))
	}
	add("Record", b.Judged.Path)
	add("Judged by", reports.Enumerate(b.Judged.Practice))
	return all
}

func (b *builder) measure(q quantity.Quantity, known bool) string {
	if !known {
		return ""
	}
	return reports.Glued(q.Format(b.Units))
}

func cautions() []string {
	return []string{
		reports.Caution,
		"A waiver does not make a fault harmless: whoever waives it answers for it.",
		"A verdict rests on what the record says. Where the record is wrong, so is the verdict.",
	}
}

// origin says what the report was made of, so that it can be made again.
func (b *builder) origin() []reports.Labelled {
	all := []reports.Labelled{
		{Label: "Record", Text: reports.Plain(b.Judged.Path)},
		{Label: "Digest of the record", Text: "sha256:" + b.Judged.SHA256},
		{Label: "Digest of the rules", Text: b.Practice.Digest},
		{Label: "Made by", Text: "driploop " + b.Version},
	}
	if !b.At.IsZero() {
		all = append(all, reports.Labelled{Label: "Made at", Text: b.At.Format(time.RFC3339)})
	}
	return all
}
