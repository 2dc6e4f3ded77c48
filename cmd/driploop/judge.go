package main

import (
	"errors"
	"os"
	"runtime"
	"sync"
	"time"

	"driploop/model/circuit"
	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
	"driploop/reports"
	"driploop/rules"
)

// solved is a record with what its circuit makes of it.
type solved struct {
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
		return solved{record: r}, all
	}
	return solved{record: r, analysis: circuit.Analyse(r)}, nil
}

// result is what came of one file.
type result struct {
	verdicts verdict.Record
	faults   []verdict.Fault
	source   *reports.Source
	broken   *panicked // a fault of the program
	stray    bool      // found in a folder, and no record
	judged   bool
}

// judge reads and judges one file. Whatever happens, the file is accounted for.
func (s *session) judge(f file, today time.Time) (out result) {
	defer func() {
		if value := recover(); value != nil {
			p := caught(value)
			out.broken, out.judged = &p, false
			out.faults = append(out.faults, verdict.Fault{Path: f.path, Says: p.String()})
		}
	}()
	fail := func(err error) result {
		out.faults = append(out.faults, verdict.Fault{Path: f.path, Says: reason(err)})
		return out
	}
	text, err := s.read(f.path)
	if errors.Is(err, record.ErrTooLarge) && !f.named && !recordLine.Match(beginning(f.path)) {
		return result{stray: true}
	}
	if err != nil {
		return fail(err)
	}
	if !f.named && !isRecord(text) {
		return result{stray: true}
	}
	one, faults := solve(f.path, text)
	out.source = reports.NewSource(text, one.record.Places)
	if len(faults) > 0 {
		out.faults = faults
		return out
	}
	e, err := s.engine()
	if err != nil {
		return out // the whole run fails
	}
	if out.verdicts, err = e.Judge(one.record, one.facts(), today); err != nil {
		panic(&programFault{err})
	}
	out.judged = true
	return out
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

// judgeAll judges files with as many workers as there are processors; the
// results keep the order of the files. The rules are compiled beside the
// reading of the first files.
func (s *session) judgeAll(files []file, today time.Time) []result {
	go func() { _, _ = s.engine() }()
	results := make([]result, len(files))
	work := make(chan int)
	var workers sync.WaitGroup
	for range min(len(files), runtime.GOMAXPROCS(0)) {
		workers.Go(func() {
			for i := range work {
				results[i] = s.judge(files[i], today)
			}
		})
	}
	for i := range files {
		work <- i
	}
	close(work)
	workers.Wait()
	return results
}

// one reads and solves the one record of a command that takes one. Its faults
// are printed; ok tells whether the record can be used.
func (s *session) one(path string) (solved, *reports.Source, error) {
	if info, err := os.Stat(path); path != standardInput && err == nil && info.IsDir() {
		return solved{}, nil, errors.New(path + " is a folder; name one record")
	}
	text, err := s.read(path)
	if err != nil {
		return solved{}, nil, errors.New(path + ": " + reason(err))
	}
	got, faults := solve(path, text)
	source := reports.NewSource(text, got.record.Places)
	if len(faults) > 0 {
		run := &verdict.Run{Faults: faults}
		err := reports.Text(s.errs, run, reports.Options{Sources: map[string]*reports.Source{path: source}})
		return got, source, errors.Join(errUnusable, err)
	}
	return got, source, nil
}

var errUnusable = errors.New("the record cannot be used")
