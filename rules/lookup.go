package rules

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"strings"

	"driploop/model/verdict"
)

// compareIDs orders ids of rules.
func compareIDs(a, b string) int { return strings.Compare(a, b) }

// Rules returns all rules, by id.
func (e *Engine) Rules() []*verdict.Rule {
	all := make([]*verdict.Rule, len(e.rules))
	for i, r := range e.rules {
		all[i] = &r.meta
	}
	return all
}

// Rule returns a rule. The error names the nearest id there is.
func (e *Engine) Rule(id string) (*verdict.Rule, error) {
	r, err := e.find(id)
	if err != nil {
		return nil, err
	}
	return &r.meta, nil
}

func (e *Engine) find(id string) (*rule, error) {
	if r, ok := e.byID[id]; ok {
		return r, nil
	}
	return nil, fmt.Errorf("no rule %q%s", id, meant(id, names(e.byID)))
}

// Sources returns the register of sources, in its order.
func (e *Engine) Sources() []*verdict.Source {
	all := make([]*verdict.Source, len(e.reg.order))
	for i, id := range e.reg.order {
		all[i] = e.reg.sources[id]
	}
	return all
}

// Source returns a source. The error names the nearest id there is.
func (e *Engine) Source(id string) (*verdict.Source, error) {
	if s, ok := e.reg.sources[id]; ok {
		return s, nil
	}
	return nil, fmt.Errorf("no source %q%s", id, meant(id, e.reg.order))
}

// Sets returns the practice sets, in the order of the register.
func (e *Engine) Sets() []Set { return append([]Set(nil), e.reg.sets...) }

// Limits returns the limits of a rule by practice set; none if it has no
// figures to compare with.
func (e *Engine) Limits(id string) ([]Limit, error) {
	r, err := e.find(id)
	if err != nil {
		return nil, err
	}
	return r.limits, r.read().err()
}

// Example returns the example of a rule. Its records name the practice sets
// that bring the rule, so that whoever judges them finds what they show.
func (e *Engine) Example(id string) (Example, error) {
	r, err := e.find(id)
	if err != nil {
		return Example{}, err
	}
	name := strings.TrimSuffix(r.file, ".rego") + ".yaml"
	if r.yard != nil {
		if _, err := fs.Stat(r.files, name); errors.Is(err, fs.ErrNotExist) {
			return Example{}, nil // only prove asks a yard for one
		}
		var faults problems
		if !r.yard.ordinary(name, path.Join(r.yard.Path, name), &faults) {
			return Example{}, faults.err()
		}
	}
	example, err := readExample(r.files, name)
	if err != nil {
		return Example{}, err
	}
	for _, part := range []*Part{&example.Breach, &example.Cure, &example.Open} {
		part.Text = practised(part.Text, r.sets)
	}
	return example, nil
}

// Digest identifies the rules: "sha256:" and the digest over every file that
// bears on a verdict.
func (e *Engine) Digest() string { return e.digest }

// digest hashes names and contents of the policies and registers.
func digest(files fs.FS) (string, error) {
	named, err := policies(files)
	if err != nil {
		return "", err
	}
	sum := sha256.New()
	for _, name := range append(named, "sources.yaml", "practice.yaml") {
		text, err := fs.ReadFile(files, name)
		if errors.Is(err, fs.ErrNotExist) {
			continue // a yard's folder needs neither
		}
		if err != nil {
			return "", fmt.Errorf("digest rules: %w", err)
		}
		fmt.Fprintf(sum, "%s %d\n", name, len(text))
		sum.Write(text)
	}
	return "sha256:" + hex.EncodeToString(sum.Sum(nil)), nil
}
