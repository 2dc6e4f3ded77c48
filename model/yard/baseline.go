package yard

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"

	"driploop/model/verdict"
)

// baselineFormat names the version of the format of a baseline.
const baselineFormat = "driploop.baseline/1"

// Baseline is what stood against the records of a yard on some day. What stands
// in it does not fail a check; it is counted, and never hidden without a word.
type Baseline struct {
	Path  string
	known map[string][]*Known // by fingerprint
	jobs  map[string]bool     // that were judged
}

// Known is one verdict of a baseline.
type Known struct {
	Fingerprint string           `json:"fingerprint"`
	Rule        string           `json:"rule"`
	Outcome     verdict.Outcome  `json:"outcome"`
	Severity    verdict.Severity `json:"severity"`
	Job         string           `json:"job"`
	Path        string           `json:"path"` // when it was written
	Subject     string           `json:"subject"`

	used bool
}

type baselineFile struct {
	Format string   `json:"format"`
	About  string   `json:"about"`
	Known  []*Known `json:"known"`
}

const baselineAbout = "Verdicts that stood when this was written. They are counted and do not fail a check; what is new or graver does."

// ReadBaseline reads a baseline from the text of its file.
func ReadBaseline(path string, text []byte) (*Baseline, error) {
	var file baselineFile
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&file); err != nil {
		return nil, fmt.Errorf("%s:%s: this is no baseline: %s", path, jsonPlace(text, err, decoder.InputOffset()), strings.TrimPrefix(err.Error(), "json: "))
	}
	if file.Format != baselineFormat {
		return nil, fmt.Errorf("%s: the format is %q, not %q; write it anew with --write-baseline", path, file.Format, baselineFormat)
	}
	b := &Baseline{Path: path, known: map[string][]*Known{}, jobs: map[string]bool{}}
	for i, k := range file.Known {
		if k == nil || k.Fingerprint == "" || k.Rule == "" || k.Outcome != verdict.Breach && k.Outcome != verdict.Undecided {
			return nil, fmt.Errorf("%s: known[%d] is no breach and no undecided verdict with its rule and fingerprint; write the file anew with --write-baseline", path, i)
		}
		b.known[k.Fingerprint] = append(b.known[k.Fingerprint], k)
	}
	return b, nil
}

// jsonPlace is line:column of an error in JSON.
func jsonPlace(text []byte, err error, read int64) string {
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	switch {
	case errors.As(err, &syntax):
		read = syntax.Offset
	case errors.As(err, &kind):
		read = kind.Offset
	}
	before := text[:min(max(read, 0), int64(len(text)))]
	line := bytes.Count(before, []byte("\n")) + 1
	return fmt.Sprintf("%d:%d", line, max(len(before)-bytes.LastIndexByte(before, '\n')-1, 1))
}

// Apply takes from a record the verdicts that are known, and counts the breaches
// among them. One entry of the baseline stands for one verdict: a copy of a
// record is not known because its original is. Of a job without a number an
// entry holds for the path that it was written for.
func (b *Baseline) Apply(rec *verdict.Record) {
	kept := []verdict.Verdict{}
	b.jobs[rec.Job] = true
	rec.Known = map[verdict.Severity]int{}
	for i := range rec.Verdicts {
		v := &rec.Verdicts[i]
		if !b.knows(v, rec) {
			kept = append(kept, *v)
			continue
		}
		if v.Outcome == verdict.Breach {
			rec.Known[v.Severity]++
		} else {
			rec.KnownOpen++
		}
	}
	rec.Verdicts = kept
}

func (b *Baseline) knows(v *verdict.Verdict, rec *verdict.Record) bool {
	for _, k := range b.known[v.Fingerprint(rec.Job)] {
		if !k.used && k.Outcome == v.Outcome && v.Severity <= k.Severity && (rec.Job != "" || rec.Path == k.Path) {
			k.used = true
			return true
		}
	}
	return false
}

// Cured counts the entries that no longer hold of the jobs that were judged.
func (b *Baseline) Cured() int {
	n := 0
	for _, all := range b.known {
		for _, k := range all {
			if b.jobs[k.Job] && !k.used {
				n++
			}
		}
	}
	return n
}

// Draft gathers a new baseline.
type Draft struct{ known []*Known }

// Add adds what stands against a record.
func (d *Draft) Add(rec *verdict.Record) {
	for i := range rec.Verdicts {
		if v := &rec.Verdicts[i]; v.Outcome == verdict.Breach || v.Outcome == verdict.Undecided {
			d.known = append(d.known, &Known{
				Fingerprint: v.Fingerprint(rec.Job), Rule: v.Rule.ID, Outcome: v.Outcome, Severity: v.Severity,
				Job: rec.Job, Path: rec.Path, Subject: v.Subject,
			})
		}
	}
}

// Count returns the number of breaches by severity, and of what is undecided.
func (d *Draft) Count() (breaches map[verdict.Severity]int, open int) {
	breaches = map[verdict.Severity]int{}
	for _, k := range d.known {
		if k.Outcome == verdict.Undecided {
			open++
		} else {
			breaches[k.Severity]++
		}
	}
	return breaches, open
}

// Text is the text of the baseline's file.
func (d *Draft) Text() ([]byte, error) {
	slices.SortFunc(d.known, func(a, b *Known) int {
		return cmp.Or(strings.Compare(a.Path, b.Path), strings.Compare(a.Rule, b.Rule), strings.Compare(a.Subject, b.Subject), strings.Compare(a.Fingerprint, b.Fingerprint))
	})
	text, err := json.MarshalIndent(baselineFile{baselineFormat, baselineAbout, d.known}, "", "  ")
	if err != nil {
		return nil, fmt.Errorf("baseline: %w", err)
	}
	return append(text, '\n'), nil
}
