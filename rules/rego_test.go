package rules

import (
	"context"
	"encoding/json"
	"io/fs"
	"path"
	"strings"
	"testing"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/format"
	"github.com/open-policy-agent/opa/v1/storage/inmem"
	"github.com/open-policy-agent/opa/v1/tester"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// regoFiles returns the names of all policy files, tests included.
func regoFiles(t *testing.T) []string {
	t.Helper()
	var all []string
	for _, pattern := range []string{"*.rego", "*/*.rego"} {
		found, err := fs.Glob(shipped, pattern)
		require.NoError(t, err)
		all = append(all, found...)
	}
	require.NotEmpty(t, all)
	return all
}

// parsed returns all policy files as stock OPA parses them.
func parsed(t *testing.T) map[string]*ast.Module {
	t.Helper()
	modules := map[string]*ast.Module{}
	for _, name := range regoFiles(t) {
		text, err := fs.ReadFile(shipped, name)
		require.NoError(t, err)
		module, err := ast.ParseModuleWithOpts(name, string(text), ast.ParserOptions{ProcessAnnotation: true})
		require.NoError(t, err)
		modules[name] = module
	}
	return modules
}

func TestRegoFilesAreFormatted(t *testing.T) {
	for _, name := range regoFiles(t) {
		text, err := fs.ReadFile(shipped, name)
		require.NoError(t, err)
		want, err := format.Source(name, text)
		require.NoError(t, err)
		assert.True(t, string(want) == string(text), "%s is not formatted; run: opa fmt -w rules", name)
	}
}

// TestStockOPAChecksTheRules does what "opa check --strict -s rules/schema
// rules" does: full capabilities, schemas by annotation.
func TestStockOPAChecksTheRules(t *testing.T) {
	text, err := fs.ReadFile(shipped, "schema/facts.json")
	require.NoError(t, err)
	var schema any
	require.NoError(t, json.Unmarshal(text, &schema))
	schemas := ast.NewSchemaSet()
	schemas.Put(ast.MustParseRef("schema.facts"), schema)
	compiler := ast.NewCompiler().WithStrict(true).WithSchemas(schemas).WithUseTypeCheckAnnotations(true)
	compiler.Compile(parsed(t))
	require.False(t, compiler.Failed(), "%v", compiler.Errors)
}

func TestRegoTestsPass(t *testing.T) {
	ctx := context.Background()
	store := inmem.New()
	txn, err := store.NewTransaction(ctx)
	require.NoError(t, err)
	defer store.Abort(ctx, txn)
	results, err := tester.NewRunner().SetStore(store).SetModules(parsed(t)).RunTests(ctx, txn)
	require.NoError(t, err)
	ran := map[string]bool{}
	for result := range results {
		assert.True(t, result.Pass(), "%s: %s.%s fails %v", result.Location, result.Package, result.Name, result.Error)
		ran[result.Package] = true
	}
	for name, module := range parsed(t) {
		if strings.HasSuffix(name, "_test.rego") {
			assert.True(t, ran[module.Package.Path.String()], "%s holds no test", name)
		}
	}
}

// TestEveryRuleIsATrio checks that each rule stands beside its Rego tests, in a
// package of its own, and its example.
func TestEveryRuleIsATrio(t *testing.T) {
	engine := readEngine(t)
	modules := parsed(t)
	for _, r := range engine.rules {
		name := strings.TrimSuffix(r.file, ".rego")
		if test := modules[name+"_test.rego"]; assert.NotNil(t, test, "%s has no tests", r.meta.ID) {
			assert.Equal(t, r.mod.Package.Path.String()+"_test", test.Package.Path.String(), "%s_test.rego", name)
			assert.GreaterOrEqual(t, len(test.Rules), 2, "%s_test.rego: at least one test that finds and one that is silent", name)
		}
		_, err := engine.Example(r.meta.ID)
		assert.NoError(t, err)
	}
	for name := range modules {
		rule, isTest := strings.CutSuffix(name, "_test.rego")
		if isTest {
			assert.NotNil(t, modules[rule+".rego"], "%s tests no rule", name)
		}
	}
	examples, err := fs.Glob(shipped, "*/*.yaml")
	require.NoError(t, err)
	for _, name := range examples {
		if path.Dir(name) == clausesFolder {
			continue
		}
		assert.NotNil(t, modules[strings.TrimSuffix(name, ".yaml")+".rego"], "%s shows no rule", name)
	}
}
