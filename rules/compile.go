package rules

import (
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"strings"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/rego"
)

// compile compiles all modules together, strictly and against the schema of the
// facts.
func compile(files fs.FS, modules map[string]*ast.Module, faults *problems) *ast.Compiler {
	text, err := fs.ReadFile(files, "schema/facts.json")
	if err != nil {
		faults.add("schema/facts.json", 0, "%v", err)
		return nil
	}
	var schema any
	if err := json.Unmarshal(text, &schema); err != nil {
		faults.add("schema/facts.json", 0, "%v", err)
		return nil
	}
	schemas := ast.NewSchemaSet()
	schemas.Put(ast.SchemaRootRef, schema)
	compiler := ast.NewCompiler().WithStrict(true).WithSchemas(schemas).WithCapabilities(capabilities()).
		WithDefaultRegoVersion(ast.RegoV1)
	compiler.Compile(modules)
	if compiler.Failed() {
		addParse(faults, "", compiler.Errors)
		return nil
	}
	return compiler
}

// prepare prepares the one query that evaluates every part of every rule.
func prepare(compiler *ast.Compiler, all []*rule) (rego.PreparedEvalQuery, error) {
	parts := make([]string, 0, len(all)+1)
	for _, r := range all {
		path := r.mod.Package.Path.String()
		defined := []string{fmt.Sprintf("%q: %s.breach", "breach", path)}
		if r.hasApplies {
			defined = append(defined, fmt.Sprintf("%q: %s.applies", "applies", path))
		}
		if r.hasExcludes {
			defined = append(defined, fmt.Sprintf("%q: %s.excludes", "excludes", path))
		}
		if r.hasAsks {
			defined = append(defined, fmt.Sprintf("%q: %s.asks", "asks", path))
		}
		parts = append(parts, fmt.Sprintf("%q: {%s}", r.meta.ID, strings.Join(defined, ", ")))
	}
	parts = append(parts, fmt.Sprintf("%q: data.driploop.binding.binds", bindsKey))
	query := rego.New(
		rego.Query("found := {"+strings.Join(parts, ", ")+"}"),
		rego.Compiler(compiler),
		rego.StrictBuiltinErrors(true),
	)
	return query.PrepareForEval(context.Background())
}

// bindsKey is where the query puts what package driploop.binding decides; no
// rule id is like it.
const bindsKey = "binds"

// evaluate runs the query on an input and returns what it found by rule id.
func (e *Engine) evaluate(input ast.Value) (map[string]any, error) {
	results, err := e.query.Eval(context.Background(), rego.EvalParsedInput(input))
	if err != nil {
		return nil, fmt.Errorf("evaluate rules: %w", err)
	}
	if len(results) != 1 {
		return nil, fmt.Errorf("evaluate rules: %d results instead of one", len(results))
	}
	found, ok := results[0].Bindings["found"].(map[string]any)
	if !ok {
		return nil, fmt.Errorf("evaluate rules: unexpected result %T", results[0].Bindings["found"])
	}
	return found, nil
}
