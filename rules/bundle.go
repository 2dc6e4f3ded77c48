package rules

import (
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strings"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/bundle"
)

// yardBundle is what the rules of yards stand below.
const yardBundle = "driploop/yard"

// Bundle writes the rules as a bundle of OPA, so that an OPA that runs already
// can evaluate them on facts. Its revision is the digest of the rules, and the
// same rules give the same bytes. A yard's own rules stand beside ours, under
// driploop.yard.
//
// The bundle holds what the rules say of facts: breach, applies, asks, excludes
// and limits of each, and which laws bind. What an outcome is made of beside
// that (practice sets, needs, waivers) is the engine's part.
func (e *Engine) Bundle(w io.Writer) error {
	named, err := policies(e.files)
	if err != nil {
		return err
	}
	roots := []string{"driploop/binding", "driploop/rules"}
	out := bundle.Bundle{Data: map[string]any{}}
	out.Manifest.Init()
	out.Manifest.Revision = e.digest
	out.Manifest.Roots = &roots
	out.Manifest.SetRegoVersion(ast.RegoV1)
	for _, name := range named {
		text, err := fs.ReadFile(e.files, name)
		if err != nil {
			return fmt.Errorf("bundle rules: %w", err)
		}
		out.Modules = append(out.Modules, bundle.ModuleFile{URL: "/" + name, Path: "/" + name, Raw: text})
	}
	for _, r := range e.rules {
		if r.yard == nil {
			continue
		}
		if !slices.Contains(roots, yardBundle) {
			roots = append(roots, yardBundle)
		}
		name := "/" + strings.ReplaceAll(strings.TrimPrefix(r.pkg, "driploop."), ".", "/") + ".rego"
		out.Modules = append(out.Modules, bundle.ModuleFile{URL: name, Path: name, Raw: []byte(r.text)})
	}
	if err := bundle.NewWriter(w).Write(out); err != nil {
		return fmt.Errorf("bundle rules: %w", err)
	}
	return nil
}
