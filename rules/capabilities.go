package rules

import (
	"slices"
	"strings"

	"github.com/open-policy-agent/opa/v1/ast"
)

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

// foreign names those that a yard's own rule may not call: they build texts, of
// which a few lines can make one that fills the memory in a single call.
var foreign = [...]string{"sprintf", "concat", "internal.template_string"}

// forTests names what the tests of a rule may call beside.
var forTests = [...]string{"internal.test_case", "object.union", "object.remove", "object.filter", "array.concat", "range"}

// capabilities returns what the parser and the compiler let a rule use.
func capabilities() *ast.Capabilities { return only(allowed[:]) }

// yardCapabilities returns what they let a yard's own rule use, and its tests
// what else.
func yardCapabilities(also ...string) *ast.Capabilities {
	return only(append(yardCalls(), also...))
}

// yardCalls names what a yard's own rule may call.
func yardCalls() []string {
	return slices.DeleteFunc(slices.Clone(allowed[:]), func(name string) bool { return slices.Contains(foreign[:], name) })
}

// may returns what the rule may use.
func (r *rule) may() *ast.Capabilities {
	if r.yard != nil {
		return yardCapabilities()
	}
	return capabilities()
}

// instead says what would be right where a policy calls what it may not.
func instead(message string) string {
	if !strings.HasPrefix(message, "undefined function") {
		return ""
	}
	var words []string
	for _, name := range yardCalls() {
		if !strings.Contains(name, "internal") {
			words = append(words, name)
		}
	}
	return "; a rule compares facts and may call only " + strings.Join(words, ", ")
}

func only(names []string) *ast.Capabilities {
	all := ast.CapabilitiesForThisVersion()
	few := all.Builtins[:0:0]
	for _, b := range all.Builtins {
		if slices.Contains(names, b.Name) {
			few = append(few, b)
		}
	}
	all.Builtins = few
	all.AllowNet = []string{}
	return all
}
