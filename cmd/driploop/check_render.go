package main

import (
	"driploop/model/verdict"
)

// tally is what a run has to know of a record that was judged, beside the text
// that it printed.
type tally struct {
	Counts   verdict.Counts `json:"counts"`
	Breaches map[string]int `json:"breaches,omitempty"` // that are listed, by severity
	Open     int            `json:"open,omitempty"`     // undecided ones that are listed
	Lowered  map[string]int `json:"lowered,omitempty"`  // dangers shown as less, by rule
}

// tallyOf counts what is listed of a record; what is lowered is counted before a
// baseline takes from the list.
func tallyOf(rec *verdict.Record, lowered map[string]int) tally {
	t := tally{Counts: rec.Counts, Lowered: lowered}
	for i := range rec.Verdicts {
		switch v := &rec.Verdicts[i]; v.Outcome {
		case verdict.Breach:
			if t.Breaches == nil {
				t.Breaches = map[string]int{}
			}
			t.Breaches[v.Severity.String()]++
		case verdict.Undecided:
			t.Open++
		}
	}
	return t
}

// inPrint tells whether what is printed of a record hangs on those before it: a
// baseline has one entry for one verdict, so that a copy is not known.
func (c *checking) inPrint() bool { return c.baseline != nil || c.flags.newBase != "" }

// finish renders a record that was judged, unless that has to wait for its turn,
// and lets go of what it no longer takes.
func (c *checking) finish(r *result) {
	if r.judged {
		r.tally.Lowered = lowered(&r.verdicts)
	}
	if r.judged && !c.inPrint() {
		r.failed = c.render(r)
	}
	if r.rendered != nil && !c.keptWhole() {
		r.verdicts, r.source = verdict.Record{}, nil
	}
	if len(r.faults) > 0 && r.source != nil && !c.keptWhole() {
		lines := make([]int, len(r.faults))
		for i, f := range r.faults {
			lines[i] = f.At.Line
		}
		r.source = r.source.Few(lines...)
	}
}

// keptWhole tells whether the format looks at records after they were rendered.
func (c *checking) keptWhole() bool { return c.flags.format.value == "sarif" }

// render renders a record that was judged.
func (c *checking) render(r *result) error {
	rendered, err := c.stream.Render(&r.verdicts, r.source)
	if err != nil {
		return err
	}
	r.tally, r.rendered = tallyOf(&r.verdicts, r.tally.Lowered), &rendered
	return nil
}

// weigh counts the verdicts of a record and holds them against the gate.
func (c *checking) weigh(t tally) {
	c.judged++
	for rule, n := range t.Lowered {
		c.practice.lowered[rule] += n
	}
	for word, n := range t.Breaches {
		severity, err := verdict.ParseSeverity(word)
		if err == nil && n > 0 && c.flags.fails(&verdict.Verdict{Outcome: verdict.Breach, Severity: severity}) {
			c.code = max(c.code, exitBreach)
		}
	}
	if t.Open > 0 && c.flags.fails(&verdict.Verdict{Outcome: verdict.Undecided}) {
		c.code = max(c.code, exitBreach)
	}
}
