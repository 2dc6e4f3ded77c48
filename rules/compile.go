package rules

import (
	"encoding/json"
	"io/fs"

	"github.com/open-policy-agent/opa/v1/ast"
)

// verify compiles all policies strictly and against the schema of the facts.
func verify(files fs.FS, modules map[string]*ast.Module) error {
	var faults problems
	text, err := fs.ReadFile(files, "schema/facts.json")
	if err != nil {
		faults.add("schema/facts.json", 0, "%v", err)
		return faults.err()
	}
	var schema any
	if err := json.Unmarshal(text, &schema); err != nil {
		faults.add("schema/facts.json", 0, "%v", err)
		return faults.err()
	}
	schemas := ast.NewSchemaSet()
	schemas.Put(ast.SchemaRootRef, schema)
	if compiler := newCompiler().WithSchemas(schemas); !compiles(compiler, modules) {
		addParse(&faults, "", compiler.Errors)
	}
	return faults.err()
}

func newCompiler() *ast.Compiler {
	return ast.NewCompiler().WithStrict(true).WithCapabilities(capabilities()).WithDefaultRegoVersion(ast.RegoV1)
}

func compiles(compiler *ast.Compiler, modules map[string]*ast.Module) bool {
	compiler.Compile(modules)
	return !compiler.Failed()
}
