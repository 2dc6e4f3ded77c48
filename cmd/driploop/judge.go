package main

import (
	"errors"
	"fmt"
	"os"
	"sync"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/model/yard"
	"driploop/reports"
	"driploop/rules"
)

// solved is a record with what its circuit makes of it.
type solved struct {
	text     []byte
	record   *record.Record
	analysis *circuit.Analysis
}

// facts joins record and circuit into the document that rules read.
func (s solved) facts() *facts.Document { return facts.Build(s.record, s.analysis) }

// solve reads a record from its text and solves its circuit.
func solve(name string, text []byte) (solved, []verdict.Fault) {
	r, faults := record.Decode(name, text)
	if len(faults) > 0 {
		all := make([]verdict.Fault, len(faults))
		for i, f := range faults {
			all[i] = verdict.Fault{Path: f.Name, At: f.At.Start, End: f.At.End, Says: f.Says}
		}
		return solved{text: text, record: r}, all
	}
	return solved{text: text, record: r, analysis: circuit.Analyse(r)}, nil
}

// result is what came of one file.
type result struct {
	verdicts verdict.Record
	faults   []verdict.Fault
	source   *reports.Source
	broken   *panicked // a fault of the program
	path     string    // of a record in a stream
	stray    bool      // found in a folder, and no record
	judged   bool
	dated    bool           // the verdicts hang on the day
	tally    tally          // of a record that was judged
	rendered *reports.Chunk // nil if that waits for its turn
	failed   error          // of rendering
	runaway  error          // a rule of the yard that cannot be stopped
	solved   solved         // set if the run asks to keep it
}

// judge reads and judges one file. Whatever happens, the file is accounted for.
func (c *checking) judge(f yard.File) (out result) {
	defer out.survive(f.Path)
	text, err := c.textOf(f.Path)
	var printed yard.Key
	if err == nil {
		var known bool
		if printed, out, known = c.recallPrinted(f, text); known {
			return out
		}
	}
	switch {
	case errors.Is(err, record.ErrTooLarge) && !f.Named && !yard.BeginsRecord(f.Path):
		return result{stray: true}
	case err != nil:
		return result{faults: []verdict.Fault{{Path: f.Path, Says: yard.Reason(err)}}}
	case !f.Named && !yard.IsRecord(text):
		return result{stray: true}
	}
	out = c.judgeText(f.Path, text)
	if c.earlier != nil && out.judged {
		c.compare(f.Path, &out)
	}
	if c.stream != nil {
		c.finish(&out)
		c.keep(printed, &out)
	}
	return out
}

// survive, deferred, turns a panic into what came of the record.
func (r *result) survive(path string) {
	if value := recover(); value != nil {
		p := caught(value)
		r.broken, r.judged = &p, false
		r.faults = append(r.faults, verdict.Fault{Path: path, Says: p.String()})
	}
}

// textOf returns the text of a file, as it is to be judged.
func (c *checking) textOf(path string) ([]byte, error) {
	if c.earlier != nil {
		return c.earlier.Now(path, c.read)
	}
	return c.read(path)
}

// judgeText judges the text of a record, or recalls what came of it before, and
// adds what depends on more than the text.
func (c *checking) judgeText(path string, text []byte) result {
	key := c.memory.verdictsOf(text)
	out, known := c.recall(key, path, text)
	if !known {
		out = c.judgeAnew(path, text)
		c.remember(key, &out)
	}
	if out.judged {
		c.complete(path, &out)
	}
	return out
}

// complete adds what depends on more than the text of a record: the files beside
// it, and the severities that the yard wants.
func (c *checking) complete(path string, out *result) {
	out.ask(c.settings.RequiredFiles(out.verdicts.Kind, path, out.source.At("job")))
	c.practice.recast(&out.verdicts)
	if e, err := c.engine(); err == nil && c.flags != nil && c.flags.all {
		out.verdicts.ByRule = verdict.CountByRule(e.Rules(), out.verdicts.Verdicts)
	}
}

// judgeAnew judges the text of a record.
func (c *checking) judgeAnew(path string, text []byte) (out result) {
	one, faults := solve(path, text)
	out.source = reports.NewSource(text, one.record.Places.Find)
	if len(faults) > 0 {
		out.faults = faults
		return out
	}
	e, err := c.engine()
	if err != nil {
		return out // the whole run fails
	}
	builder := c.builders.take()
	doc := builder.Build(one.record, one.analysis)
	doc.Practice = c.practice.inForce(doc.Practice, one.record.Practice.At().Start.Line > 0)
	judge := e.JudgeBriefly
	if c.listsMet() {
		judge = e.Judge
	}
	out.verdicts, err = judge(one.record, doc, c.today)
	builder.Forget()
	c.builders.give(builder)
	var ofYard *rules.YardError
	switch {
	case errors.As(err, &ofYard):
		for _, says := range ofYard.Failures {
			out.faults = append(out.faults, verdict.Fault{Path: path, Says: says})
		}
	case errors.As(err, new(*rules.RunawayError)):
		out.runaway = fmt.Errorf("%s: %w; the check ends here", path, err)
		return out
	case err != nil:
		panic(&programFault{err})
	}
	out.judged = true
	// A rule of the yard may look at the day; of ours, only those on waivers do.
	out.dated = len(one.record.Waivers) > 0 || len(c.settings.Rules) > 0
	out.ask(c.settings.RequiredEntries(one.record))
	if c.whole {
		out.solved = one
	}
	return out
}

// ask adds the verdicts on the documents that the yard asks for.
func (r *result) ask(documents []verdict.Verdict) {
	if len(documents) == 0 {
		return
	}
	for i := range documents {
		r.verdicts.Counts[documents[i].Outcome]++
	}
	r.verdicts.Verdicts = append(r.verdicts.Verdicts, documents...)
	verdict.Sort(r.verdicts.Verdicts)
}

// engine is how a session comes to its rules: compiled when first asked for.
type engine func() (*rules.Engine, error)

// compiled returns the rules that the program ships with. A failure is a fault
// of the program.
func compiled() engine {
	return sync.OnceValues(func() (*rules.Engine, error) {
		e, err := rules.New()
		if err != nil {
			return nil, &programFault{err}
		}
		return e, nil
	})
}

// one reads and solves the one record of a command that takes one. Its faults
// are printed; ok tells whether the record can be used.
func (s *session) one(path string) (solved, *reports.Source, error) {
	if info, err := os.Stat(path); path != yard.StandardInput && err == nil && info.IsDir() {
		return solved{}, nil, errors.New(path + " is a folder; name one record")
	}
	text, err := s.read(path)
	if err != nil {
		return solved{}, nil, errors.New(path + ": " + yard.Reason(err))
	}
	got, faults := solve(path, text)
	source := reports.NewSource(text, got.record.Places.Find)
	if len(faults) > 0 {
		run := &verdict.Run{Faults: faults}
		err := reports.Text(s.errs, run, reports.Options{Sources: map[string]*reports.Source{path: source}})
		return got, source, errors.Join(errUnusable, err)
	}
	return got, source, nil
}

var errUnusable = errors.New("the record cannot be used")

// read returns the text of a file, or of standard input.
func (s *session) read(path string) ([]byte, error) {
	if path == yard.StandardInput {
		return record.ReadFrom("standard input", s.in)
	}
	return record.Read(path)
}
