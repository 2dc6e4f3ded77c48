package rules

import "github.com/open-policy-agent/opa/v1/ast"

// allowed names the built-in functions that a rule may call: comparison, sets,
// strings and plain arithmetic. All else is left out, and with it the network,
// the clock, the environment, randomness, and functions whose time or memory
// grows without bound. What is not listed does not compile.
var allowed = [...]string{
	"assign", "eq", "equal", "neq", "lt", "lte", "gt", "gte",
	"internal.member_2", "internal.member_3", "internal.template_string",
	"plus", "minus", "mul", "div", "abs", "ceil", "floor",
	"and", "or", "count", "sum", "max", "min", "all", "any",
	"contains", "startswith", "endswith", "lower", "upper", "sprintf", "concat",
	"is_number", "is_string", "is_boolean", "to_number", "format_int",
	"object.get", "object.keys",
}

// capabilities returns what the parser and the compiler let a rule use.
func capabilities() *ast.Capabilities {
	all := ast.CapabilitiesForThisVersion()
	listed := map[string]bool{}
	for _, name := range allowed {
		listed[name] = true
	}
	few := all.Builtins[:0:0]
	for _, b := range all.Builtins {
		if listed[b.Name] {
			few = append(few, b)
		}
	}
	all.Builtins = few
	all.AllowNet = []string{}
	return all
}
