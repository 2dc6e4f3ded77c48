package rules

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"github.com/open-policy-agent/opa/v1/ast"

	"driploop/model/verdict"
)

// YardSet is the practice set of the rules that a yard sets itself.
const YardSet = verdict.YardSet

// Folder is a folder of rules that a yard keeps beside its records. They are not
// trusted: they may call little, and have little time and memory.
type Folder struct {
	Path  string // as people are told it
	Files fs.FS
}

// Bounds of a folder of rules.
const (
	mostPolicies  = 1000
	longestPolicy = 128 << 10 // bytes
)

// NewWith loads the rules that the program ships with and those of a yard. The
// latter are read, checked and compiled at once. The error joins every *Problem.
func NewWith(yards ...*Folder) (*Engine, error) {
	return bounded(loading(), func(context.Context) (*Engine, error) {
		e, faults, err := open(shipped, yards)
		if err != nil {
			return nil, err
		}
		if len(faults) == 0 {
			for _, f := range yards {
				faults = append(faults, e.checkYard(f)...)
			}
		}
		return e, faults.err()
	})
}

// checkYard reads and compiles the rules of a folder.
func (e *Engine) checkYard(f *Folder) (faults problems) {
	modules := map[string]*ast.Module{}
	for _, r := range e.rules {
		if r.yard != f {
			continue
		}
		found := r.read()
		faults = append(faults, found...)
		if len(found) == 0 {
			modules[r.shown] = r.mod
		}
	}
	if len(faults) > 0 {
		return faults
	}
	return verify(modules, yardCapabilities())
}

// add reads the metadata of a yard's rules, and the sources that they cite.
func (e *Engine) add(f *Folder) (faults problems) {
	named, err := policies(f.Files)
	if err != nil {
		faults.add(f.Path, 0, "%v", err)
		return faults
	}
	if len(named) > mostPolicies {
		faults.add(f.Path, 0, "holds %d policies, at most %d are read", len(named), mostPolicies)
		return faults
	}
	for _, name := range named {
		shown := path.Join(f.Path, name)
		if path.Dir(name) == "." {
			faults.add(shown, 0, "stands in no topic's folder; move it to %s/<topic>/%s", f.Path, name)
			continue
		}
		if !f.ordinary(name, shown, &faults) {
			continue
		}
		if r := readRule(f.Files, name, shown, &faults); r != nil {
			r.yard = f
			e.rules = append(e.rules, r)
		}
	}
	e.addSources(f, &faults)
	return faults
}

// ordinary refuses what is no file of a policy's size.
func (f *Folder) ordinary(name, shown string, faults *problems) bool {
	info, err := fs.Stat(f.Files, name)
	switch {
	case err != nil:
		faults.add(shown, 0, "%v", err)
	case !info.Mode().IsRegular():
		faults.add(shown, 0, "is no ordinary file")
	case info.Size() > longestPolicy:
		faults.add(shown, 0, "has %d bytes; a policy has at most %d", info.Size(), longestPolicy)
	default:
		return true
	}
	return false
}

// addSources takes the sources of a yard into the register. None may take the id
// of one of ours, and none is law.
func (e *Engine) addSources(f *Folder, faults *problems) {
	const name = "sources.yaml"
	shown := path.Join(f.Path, name)
	var held struct {
		Sources []source `yaml:"sources"`
	}
	if _, err := fs.Stat(f.Files, name); errors.Is(err, fs.ErrNotExist) || !f.ordinary(name, shown, faults) {
		return
	}
	if err := readYAML(f.Files, name, &held); err != nil {
		addYAML(faults, shown, err)
		return
	}
	for _, s := range held.Sources {
		switch {
		case s.ID == "" || s.Title == "" || s.Edition == "" || s.Issuer == "" || s.Scope == "":
			faults.add(shown, 0, "source %q lacks one of id, title, edition, issuer, scope", s.ID)
		case e.reg.sources[s.ID] != nil:
			faults.add(shown, 0, "source %q is there already; choose another id", s.ID)
		case s.Force == verdict.Law || !slices.Contains(forces[:], s.Force):
			faults.add(shown, 0, "source %q has force %q; a yard's own source is a standard, handbook or practice", s.ID, s.Force)
		default:
			e.reg.sources[s.ID] = &verdict.Source{ID: s.ID, Title: s.Title, Edition: s.Edition, Issuer: s.Issuer, Force: s.Force, Scope: s.Scope}
			e.reg.order = append(e.reg.order, s.ID)
		}
	}
}

// ownVoice holds a yard's rule to speak for the yard alone: within its own
// practice set, and never as law.
func (v *validator) ownVoice(r *rule) {
	if r.yard == nil {
		return
	}
	for i, c := range r.meta.Sources {
		if c.Set != YardSet {
			v.at(r, entry("custom.sources", i), "a yard's rule stands in the practice set %s, not in %q", YardSet, c.Set)
		}
		if s := v.reg.sources[c.Source]; s != nil && s.Force == verdict.Law {
			v.at(r, entry("custom.sources", i), "a yard's rule is no law; cite %s in words under asks, with a source of the yard's own", c.Source)
		}
	}
}

// digests identifies all rules: those of a folder, and those of yards.
func digests(files fs.FS, yards []*Folder) (string, error) {
	all, err := digest(files)
	if err != nil || len(yards) == 0 {
		return all, err
	}
	parts := []string{all}
	for _, f := range yards {
		one, err := digest(f.Files)
		if err != nil {
			return "", fmt.Errorf("%s: %w", f.Path, err)
		}
		parts = append(parts, one)
	}
	sum := sha256.Sum256([]byte(strings.Join(parts, "\n")))
	return "sha256:" + hex.EncodeToString(sum[:]), nil
}
