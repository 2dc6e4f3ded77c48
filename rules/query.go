package rules

import (
	"context"
	"fmt"
	"strings"
	"sync"
	"sync/atomic"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/rego"
)

// query evaluates one policy in OPA. It is compiled when first run, and safe
// for concurrent use.
type query struct {
	prepared func() (*rego.PreparedEvalQuery, error)
	ready    atomic.Bool // compiled
}

// queryOf returns the query for an object of terms of a policy. The policy has
// been checked when it was loaded; to evaluate it takes no schema, whose loading
// is most of the cost of compiling a single rule.
func queryOf(file string, module *ast.Module, object string, may *ast.Capabilities) *query {
	var q query
	q.prepared = sync.OnceValues(func() (*rego.PreparedEvalQuery, error) {
		defer q.ready.Store(true)
		compiler := newCompiler(may)
		if !compiles(compiler, map[string]*ast.Module{file: module}) {
			return nil, fmt.Errorf("compile %s: %w", file, compiler.Errors)
		}
		prepared, err := rego.New(
			rego.Query("found := "+object),
			rego.Compiler(compiler),
			rego.StrictBuiltinErrors(true),
		).PrepareForEval(context.Background())
		if err != nil {
			return nil, fmt.Errorf("prepare %s: %w", file, err)
		}
		return &prepared, nil
	})
	return &q
}

// run evaluates the query on an input.
func (q *query) run(ctx context.Context, input ast.Value) (map[string]any, error) {
	prepared, err := q.prepared()
	if err != nil {
		return nil, err
	}
	results, err := prepared.Eval(ctx, rego.EvalParsedInput(input))
	if err != nil {
		return nil, fmt.Errorf("evaluate: %w", err)
	}
	if len(results) != 1 {
		return nil, fmt.Errorf("evaluate: %d results instead of one", len(results))
	}
	found, ok := results[0].Bindings["found"].(map[string]any)
	if !ok {
		return nil, fmt.Errorf("evaluate: unexpected result %T", results[0].Bindings["found"])
	}
	return found, nil
}

// parts returns the parts that the rule's package defines, as an object.
func (r *rule) parts() string {
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
	return "{" + strings.Join(all, ", ") + "}"
}

// consult has OPA evaluate a rule on an input.
func (r *rule) consult(input ast.Value) (found, error) {
	if r.yard != nil {
		return bounded(evaluation(), func(ctx context.Context) (found, error) { return r.evaluate(ctx, input) })
	}
	return r.evaluate(context.Background(), input)
}

func (r *rule) evaluate(ctx context.Context, input ast.Value) (found, error) {
	result, err := r.query.run(ctx, input)
	if err != nil {
		return found{}, fmt.Errorf("rule %s: %w", r.meta.ID, err)
	}
	return r.decode(result)
}
