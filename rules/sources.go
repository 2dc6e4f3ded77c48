package rules

import (
	"bytes"
	"fmt"
	"io/fs"
	"slices"

	"go.yaml.in/yaml/v3"

	"driploop/model/verdict"
)

// Set is a practice set: a body of practice that a record can ask to be judged
// by.
type Set struct {
	ID          string `yaml:"id" json:"id"`
	Title       string `yaml:"title" json:"title"`
	Description string `yaml:"description" json:"description"`
}

// register is what sources.yaml and practice.yaml hold.
type register struct {
	sources map[string]*verdict.Source
	order   []string
	sets    []Set
}

// source is an entry of sources.yaml.
type source struct {
	ID      string        `yaml:"id"`
	Title   string        `yaml:"title"`
	Edition string        `yaml:"edition"`
	Issuer  string        `yaml:"issuer"`
	Force   verdict.Force `yaml:"force"`
	Scope   string        `yaml:"scope"`
}

// forces lists the authorities that a source can have.
var forces = [...]verdict.Force{verdict.Law, verdict.Standard, verdict.Handbook, verdict.Practice}

// readRegister reads the registers of sources and practice sets.
func readRegister(files fs.FS, faults *problems) register {
	reg := register{sources: map[string]*verdict.Source{}}
	var sources struct {
		Sources []source `yaml:"sources"`
	}
	if err := readYAML(files, "sources.yaml", &sources); err != nil {
		faults.add("sources.yaml", 0, "%v", err)
	}
	for _, s := range sources.Sources {
		for name, value := range map[string]string{"id": s.ID, "title": s.Title, "edition": s.Edition, "issuer": s.Issuer, "scope": s.Scope} {
			if value == "" {
				faults.add("sources.yaml", 0, "source %q has no %s", s.ID, name)
			}
		}
		if !slices.Contains(forces[:], s.Force) {
			faults.add("sources.yaml", 0, "source %q has force %q; use law, standard, handbook or practice", s.ID, s.Force)
		}
		if reg.sources[s.ID] != nil {
			faults.add("sources.yaml", 0, "source %q stands twice", s.ID)
		}
		reg.sources[s.ID] = &verdict.Source{ID: s.ID, Title: s.Title, Edition: s.Edition, Issuer: s.Issuer, Force: s.Force, Scope: s.Scope}
		reg.order = append(reg.order, s.ID)
	}
	reg.sets = readSets(files, faults)
	return reg
}

func readSets(files fs.FS, faults *problems) []Set {
	var practice struct {
		Sets []Set `yaml:"sets"`
	}
	if err := readYAML(files, "practice.yaml", &practice); err != nil {
		faults.add("practice.yaml", 0, "%v", err)
	}
	seen := map[string]bool{}
	for _, s := range practice.Sets {
		if s.ID == "" || s.Title == "" || s.Description == "" {
			faults.add("practice.yaml", 0, "practice set %q needs id, title and description", s.ID)
		}
		if seen[s.ID] {
			faults.add("practice.yaml", 0, "practice set %q stands twice", s.ID)
		}
		seen[s.ID] = true
	}
	return practice.Sets
}

func readYAML(files fs.FS, name string, into any) error {
	text, err := fs.ReadFile(files, name)
	if err != nil {
		return fmt.Errorf("read: %w", err)
	}
	decoder := yaml.NewDecoder(bytes.NewReader(text))
	decoder.KnownFields(true)
	return decoder.Decode(into)
}

// setIDs returns the ids of the practice sets.
func (r *register) setIDs() []string {
	ids := make([]string, len(r.sets))
	for i, s := range r.sets {
		ids[i] = s.ID
	}
	return ids
}
