package rules

import (
	"maps"
	"slices"

	"github.com/open-policy-agent/opa/v1/ast"
)

// local refuses a rule that looks at several subjects at once. The engine may
// hand OPA any of the subjects without the others, so that what a rule says of
// one must not hang on another: each definition picks one subject by one
// variable, and of a set of subjects it is only asked whether that one is in it.
func (v *validator) local(r *rule, all map[string][]definition) {
	picking := pickers(all)
	for _, name := range slices.Sorted(maps.Keys(all)) {
		for _, def := range all[name] {
			v.localDefinition(r, def, picking)
		}
	}
}

func (v *validator) localDefinition(r *rule, def definition, picking map[string]bool) {
	at := func(at *ast.Location, format string, args ...any) { v.faults.addAt(r.shown, at, format, args...) }
	keys := maps.Clone(def.keys)
	for _, u := range def.uses {
		if !picking[u.name] {
			continue
		}
		if u.by == "" {
			at(u.at, "%s speaks of several %s; a rule looks at one subject at a time and asks only whether its own is in it", u.name, r.of.name)
			return
		}
		keys[u.by] = true
	}
	switch {
	case len(keys) > 1:
		at(def.at, "a rule looks at one subject at a time; here %s are picked by different keys", r.of.name)
	case len(keys) == 1 && !keys[def.addresses]:
		at(def.at, "%s picks from the %s and is no set of their ids; write: %s contains id if { some id, … in input.%s … }", def.name, r.of.name, def.name, r.of.name)
	case len(keys) == 0 && isPart(def.name) && (!r.of.single || def.names != r.of.name):
		at(def.at, "%s names none of the %s; pick each by its id: some id, … in input.%s", def.name, r.of.name, r.of.name)
	}
}

// isPart tells whether a definition is one that the engine asks for.
func isPart(name string) bool {
	return name == "breach" || name == "applies" || name == "excludes" || name == "asks"
}

// pickers returns the definitions that pick subjects of the collection, by
// themselves or by what they use.
func pickers(all map[string][]definition) map[string]bool {
	picking := map[string]bool{}
	for known := -1; known != len(picking); {
		known = len(picking)
		for name, defs := range all {
			for _, def := range defs {
				if len(def.keys) > 0 || slices.ContainsFunc(def.uses, func(u use) bool { return picking[u.name] }) {
					picking[name] = true
				}
			}
		}
	}
	return picking
}

// address returns the variable by which a term tells a subject: the id itself,
// or an object with it as "subject", or an array with it at the front.
func (d *reader) address(x *ast.Term) string {
	if x == nil {
		return ""
	}
	switch v := x.Value.(type) {
	case ast.Object:
		if subject := v.Get(ast.InternedTerm("subject")); subject != nil {
			return d.address(subject)
		}
	case *ast.Array:
		if v.Len() > 0 {
			return d.address(v.Elem(0))
		}
	case ast.Ref:
		if len(v) == 2 && v[1].Equal(ast.InternedTerm("subject")) && d.stands(v[0]).kind == nothing {
			return d.address(v[0])
		}
	case ast.Var:
		return string(v)
	}
	return ""
}

// named returns the constant by which a member of a part names its subject.
func named(x *ast.Term) string {
	if x == nil {
		return ""
	}
	if object, ok := x.Value.(ast.Object); ok {
		return named(object.Get(ast.InternedTerm("subject")))
	}
	name, _ := x.Value.(ast.String)
	return string(name)
}
