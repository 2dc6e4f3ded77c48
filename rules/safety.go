package rules

import (
	"slices"

	"github.com/open-policy-agent/opa/v1/ast"
)

// safe refuses a rule that could pass in silence: one whose condition reads a
// fact that may be missing and that its metadata does not name, or that holds
// because a fact is missing.
//
// What makes a rule safe: a condition in which a fact is missing never holds,
// and each such fact is in needs, asks or decides, for the engine to find it
// missing. Hence conditions may be only of forms in which it can be seen which
// facts they read, and which cannot turn true by taking a fact away.
func (v *validator) safe(r *rule) {
	if r.of == nil {
		return
	}
	all := v.definitions(r)
	v.local(r, all)
	listed := slices.Concat(r.needs, r.asks, r.decides)
	for _, c := range r.clauses {
		listed = append(listed, c.needs...)
	}
	everywhere := map[string]bool{}
	deciding, judging := map[string]bool{}, map[string]bool{}
	for _, part := range []struct {
		name  string
		facts []need
		where string
	}{
		{"breach", listed, "needs, asks or decides"},
		{"asks", listed, "needs, asks or decides"},
		{"applies", slices.Concat(r.decides, r.asks), "decides or asks"},
		{"excludes", slices.Concat(r.decides, r.asks), "decides or asks"},
	} {
		for _, f := range closure(all, part.name) {
			name := f.title(r.of)
			everywhere[name] = true
			switch part.name {
			case "applies":
				deciding[name] = true
			case "breach":
				judging[name] = true
			}
			if !f.fact.optional {
				continue
			}
			if !slices.ContainsFunc(part.facts, func(n need) bool { return n.name == name }) {
				v.faults.addAt(r.shown, f.at, "%s reads %s, which may be missing; list it in %s", part.name, name, part.where)
			}
			if f.exact {
				v.faults.addAt(r.shown, f.at, `%s could hold because %s is missing: no "not", comprehension, default or else over a fact that may be missing`, part.name, name)
			}
		}
	}
	for _, facts := range [][]need{r.needs, r.asks, r.decides} {
		for i := range facts {
			facts[i].deciding, facts[i].judging = deciding[facts[i].name], judging[facts[i].name]
		}
	}
	v.unread(r, everywhere)
}

// unread refuses facts that are listed as deciding and read nowhere: they would
// leave a verdict undecided for nothing. Needs may name facts that the rule does
// not read: those that say whether a count or a latest date is whole.
func (v *validator) unread(r *rule, everywhere map[string]bool) {
	for _, n := range r.decides {
		if !everywhere[n.name] {
			v.at(r, n.at, "the metadata lists %s, which the rule does not read", n.name)
		}
	}
}

// definitions returns what the Rego rules of a rule's package read, by name.
func (v *validator) definitions(r *rule) map[string][]definition {
	for _, imported := range r.mod.Imports {
		v.faults.addAt(r.shown, imported.Location, "a rule imports nothing")
	}
	defined := map[string]bool{}
	for _, def := range r.mod.Rules {
		defined[nameOf(def)] = true
	}
	all := map[string][]definition{}
	for _, def := range r.mod.Rules {
		var found definition
		d := reader{
			own: r.of, kinds: v.kinds, defined: defined, names: map[string]holder{}, into: &found,
			fault: func(at *ast.Location, format string, args ...any) { v.faults.addAt(r.shown, at, format, args...) },
		}
		d.definition(def)
		all[found.name] = append(all[found.name], found)
	}
	exactDefaults(r.mod, all)
	return all
}

// exactDefaults marks what a definition with a default reads: with a fact
// missing the default holds.
func exactDefaults(module *ast.Module, all map[string][]definition) {
	for _, def := range module.Rules {
		if !def.Default {
			continue
		}
		for _, same := range all[nameOf(def)] {
			for i := range same.reads {
				same.reads[i].exact = true
			}
			for i := range same.uses {
				same.uses[i].exact = true
			}
		}
	}
}

// closure returns what a definition reads, itself and by what it uses.
func closure(all map[string][]definition, name string) []read {
	var reads []read
	seen := map[use]bool{}
	var visit func(u use)
	visit = func(u use) {
		if u.by, u.at = "", nil; seen[u] {
			return
		}
		seen[u] = true
		for _, def := range all[u.name] {
			for _, f := range def.reads {
				f.exact = f.exact || u.exact
				reads = append(reads, f)
			}
			for _, next := range def.uses {
				visit(use{name: next.name, exact: next.exact || u.exact})
			}
		}
	}
	visit(use{name: name})
	return reads
}
