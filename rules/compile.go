package rules

import (
	"context"
	"encoding/json"
	"io/fs"
	"sync"

	"github.com/open-policy-agent/opa/v1/ast"
)

// portions is into how many parts rules are split to compile them at once. OPA
// compiles on one core, and rules know nothing of each other.
const portions = 2

// build compiles the rules and prepares the queries that evaluate them.
func build(files fs.FS, all []*rule, others map[string]*ast.Module) ([]query, error) {
	queries := make([]query, portions)
	found := make([]problems, portions)
	var work sync.WaitGroup
	for i := range queries {
		from, to := i*len(all)/portions, (i+1)*len(all)/portions
		work.Go(func() { queries[i] = buildPortion(files, all[from:to], others, i == 0, &found[i]) })
	}
	work.Wait()
	var faults problems
	for _, f := range found {
		faults = append(faults, f...)
	}
	return queries, faults.err()
}

// buildPortion compiles some of the rules; the first portion also tells which
// laws bind.
func buildPortion(files fs.FS, some []*rule, others map[string]*ast.Module, first bool, faults *problems) query {
	modules := map[string]*ast.Module{}
	for _, r := range some {
		modules[r.file] = r.mod
	}
	if first {
		for name, module := range others {
			modules[name] = module
		}
	}
	compiler := compile(files, modules, faults)
	if compiler == nil {
		return query{}
	}
	prepared, err := prepare(compiler, some, first)
	if err != nil {
		faults.add("rules", 0, "prepare: %v", err)
	}
	return prepared
}

// compile compiles modules strictly and against the schema of the facts.
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

// evaluate runs all rules on an input and returns what they find by rule id.
func (e *Engine) evaluate(input ast.Value) (map[string]any, error) {
	queries, err := e.queries()
	if err != nil {
		return nil, err
	}
	all := map[string]any{}
	for _, q := range queries {
		if err := q.run(context.Background(), input, all); err != nil {
			return nil, err
		}
	}
	return all, nil
}
