package yard

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"driploop/model/record"
	"driploop/model/verdict"
)

// RequiredID is the id of the rule that the settings make: a job has the
// documents that its yard asks for.
const RequiredID = "documents/asked-by-yard"

// Required describes that rule. Nothing but the yard's own settings stands behind
// it.
func Required() *verdict.Rule {
	return &verdict.Rule{
		ID: RequiredID, Title: "Document that the yard asks for is missing", Severity: verdict.Warning, Subject: "job",
		Why:     "What is not written down or filed when the job is done cannot be shown to the owner or the surveyor later.",
		Applies: "every job of a kind that the yard's settings list under documents",
		Says:    "no {document}, which the yard asks of {kind}", Remedy: "Add {document}.", Since: "0.2.0",
		Sources: []verdict.Citation{{Set: verdict.YardSet, Source: SettingsName, Asks: "the documents that its settings list", Trust: verdict.NoSource}},
	}
}

// RequiredRule returns the rule that the settings make.
func (s *Settings) RequiredRule() *verdict.Rule { return s.rule }

// Asked identifies the entries of a record that the settings ask for, and where
// they do.
func (s *Settings) Asked() string {
	if len(s.Documents) == 0 {
		return ""
	}
	text := s.Path
	for _, d := range s.Documents {
		text += fmt.Sprintf("\n%s %d:%d %q", d.Kind, d.At.Line, d.At.Column, d.Entries)
	}
	return text
}

// AsksForFiles tells whether the settings ask for files beside a record.
func (s *Settings) AsksForFiles() bool {
	return slices.ContainsFunc(s.Documents, func(d Requirement) bool { return len(d.Files) > 0 })
}

// RequiredEntries judges whether a record gives the entries that the yard asks
// of its kind of job.
func (s *Settings) RequiredEntries(r *record.Record) []verdict.Verdict {
	at := r.Places.At("job")
	return s.documents(r.Job.Kind.V, at, func(d Requirement) []string { return d.Entries }, r.Given)
}

// RequiredFiles judges whether the files that the yard asks of a kind of job are
// in the folder of its record or below. Of each pattern one has to be there.
func (s *Settings) RequiredFiles(kind, path string, at verdict.Range) []verdict.Verdict {
	var names []string
	return s.documents(kind, at, func(d Requirement) []string {
		all := make([]string, len(d.Files))
		for i, p := range d.Files {
			all[i] = p.Text
		}
		return all
	}, func(pattern string) bool {
		if names == nil {
			names = namesBelow(filepath.Dir(path))
		}
		compiled, err := compile(pattern)
		if err != nil {
			panic(err) // it was compiled when the settings were read
		}
		p := []Pattern{{glob: compiled}}
		return slices.ContainsFunc(names, func(name string) bool { return matches(p, name) })
	})
}

// documents judges the documents of one sort that are asked of a kind of job.
func (s *Settings) documents(kind string, at verdict.Range, asked func(Requirement) []string, there func(string) bool) []verdict.Verdict {
	var all []verdict.Verdict
	for _, d := range s.Documents {
		if d.Kind != AnyKind && kind != "" && d.Kind != kind {
			continue
		}
		of := "every job"
		if d.Kind != AnyKind {
			of = "jobs of kind " + d.Kind
		}
		for _, document := range asked(d) {
			v := verdict.Verdict{
				Rule: s.rule, Severity: s.rule.Severity, Subject: "job", At: at, ID: d.Kind + " " + document, Outcome: verdict.Met,
				Figures: []verdict.Figure{{Name: "document", Text: document}, {Name: "kind", Text: of}},
				Sources: []verdict.Cited{{Citation: s.rule.Sources[0], Title: fmt.Sprintf("The yard's settings, %s:%d:%d", s.Path, d.At.Line, d.At.Column), Force: verdict.Practice}},
			}
			switch {
			case d.Kind != AnyKind && kind == "":
				v.Outcome, v.Missing = verdict.Undecided, []verdict.Gap{{Field: "job.kind"}}
			case !there(document):
				v.Outcome, v.Says, v.Remedy = verdict.Breach, s.rule.Says, s.rule.Remedy
			}
			all = append(all, v)
		}
	}
	return all
}

// manyNames bounds how many files beside a record are looked at.
const manyNames = 10_000

// namesBelow lists the files of a folder and below it, with slashes.
func namesBelow(folder string) []string {
	names := []string{}
	_ = fs.WalkDir(os.DirFS(folder), ".", func(path string, entry fs.DirEntry, err error) error {
		switch {
		case len(names) >= manyNames:
			return fs.SkipAll
		case err != nil || entry.IsDir() && entry.Name() == ".git":
			return fs.SkipDir
		case !entry.IsDir():
			names = append(names, path)
		}
		return nil
	})
	return names
}
