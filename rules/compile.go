package rules

import (
	"encoding/json"
	"io/fs"

	"github.com/open-policy-agent/opa/v1/ast"
)

// verify compiles all policies strictly and against the schema of the facts.
func verify(modules map[string]*ast.Module, may *ast.Capabilities) problems {
	var faults problems
	files := shipped
	text, err := fs.ReadFile(files, "schema/facts.json")
	if err != nil {
		faults.add("schema/facts.json", 0, "%v", err)
		return faults
	}
	var schema any
	if err := json.Unmarshal(text, &schema); err != nil {
		faults.add("schema/facts.json", 0, "%v", err)
		return faults
	}
	schemas := ast.NewSchemaSet()
	schemas.Put(ast.SchemaRootRef, schema)
	if compiler := newCompiler(may).WithSchemas(schemas); !compiles(compiler, modules) {
		addParse(&faults, "", compiler.Errors)
	}
	return faults
}

func newCompiler(may *ast.Capabilities) *ast.Compiler {
	return ast.NewCompiler().WithStrict(true).WithCapabilities(may).WithDefaultRegoVersion(ast.RegoV1)
}

func compiles(compiler *ast.Compiler, modules map[string]*ast.Module) bool {
	compiler.Compile(modules)
	return !compiler.Failed()
}
