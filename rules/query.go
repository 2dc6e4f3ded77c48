package rules

import (
	"context"
	"fmt"
	"maps"
	"strings"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/rego"
)

// query is one prepared query for every part of some rules. It is safe for
// concurrent use.
type query struct{ prepared rego.PreparedEvalQuery }

// bindsKey is where a query puts what package driploop.binding decides; no rule
// id is like it.
const bindsKey = "binds"

// prepare prepares the query for the parts of rules, and for which laws bind.
func prepare(compiler *ast.Compiler, some []*rule, binds bool) (query, error) {
	parts := make([]string, 0, len(some)+1)
	for _, r := range some {
		parts = append(parts, fmt.Sprintf("%q: {%s}", r.meta.ID, strings.Join(r.defined(), ", ")))
	}
	if binds {
		parts = append(parts, fmt.Sprintf("%q: data.driploop.binding.binds", bindsKey))
	}
	prepared, err := rego.New(
		rego.Query("found := {"+strings.Join(parts, ", ")+"}"),
		rego.Compiler(compiler),
		rego.StrictBuiltinErrors(true),
	).PrepareForEval(context.Background())
	return query{prepared}, err
}

// defined returns the parts that the rule's package defines, as members of an
// object.
func (r *rule) defined() []string {
	path := r.mod.Package.Path.String()
	all := make([]string, 0, 4)
	for _, part := range []struct {
		name  string
		there bool
	}{{"breach", true}, {"applies", r.hasApplies}, {"excludes", r.hasExcludes}, {"asks", r.hasAsks}} {
		if part.there {
			all = append(all, fmt.Sprintf("%q: %s.%s", part.name, path, part.name))
		}
	}
	return all
}

// run evaluates the query on an input and adds what it finds by rule id.
func (q query) run(ctx context.Context, input ast.Value, into map[string]any) error {
	results, err := q.prepared.Eval(ctx, rego.EvalParsedInput(input))
	if err != nil {
		return fmt.Errorf("evaluate rules: %w", err)
	}
	if len(results) != 1 {
		return fmt.Errorf("evaluate rules: %d results instead of one", len(results))
	}
	found, ok := results[0].Bindings["found"].(map[string]any)
	if !ok {
		return fmt.Errorf("evaluate rules: unexpected result %T", results[0].Bindings["found"])
	}
	maps.Copy(into, found)
	return nil
}
