package rules

import (
	"github.com/open-policy-agent/opa/v1/ast"
)

// read is one place where Rego reads a fact.
type read struct {
	of   *collection
	fact fact
	at   *ast.Location
	// exact: the place could hold because the fact is missing.
	exact bool
}

// use is one place where Rego refers to another definition of its package.
type use struct {
	name  string
	exact bool
	by    string // the variable whose membership is asked for
	at    *ast.Location
}

// definition is what one Rego rule of a package reads and uses.
type definition struct {
	name  string
	at    *ast.Location
	reads []read
	uses  []use
	keys  map[string]bool // what picks a subject out of its collection
	// addresses is the variable by which a member of the set that it makes tells
	// its subject; names the constant.
	addresses, names string
}

// reader finds what one definition reads. It knows only plain ways to reach a
// fact, and refuses the rest, so that nothing is read unseen.
type reader struct {
	own     *collection
	kinds   map[string]*collection
	defined map[string]bool // names of the package's definitions
	names   map[string]holder
	inner   int // depth of comprehensions and "every"
	fault   func(at *ast.Location, format string, args ...any)
	into    *definition
}

// definition reads one Rego rule with its else branches.
func (d *reader) definition(rule *ast.Rule) {
	d.into.name, d.into.at, d.into.keys = nameOf(rule), rule.Location, map[string]bool{}
	d.nameHolders(rule)
	d.into.addresses, d.into.names = d.address(rule.Head.Key), named(rule.Head.Key)
	if ref := rule.Head.Ref(); len(ref) > 1 {
		d.into.addresses = d.address(ref[1])
	}
	exact := rule.Default || rule.Else != nil
	for branch := rule; branch != nil; branch = branch.Else {
		d.head(branch.Head, exact)
		d.body(branch.Body, exact)
	}
}

// nameOf returns the name of a Rego rule, whatever keys stand behind it.
func nameOf(rule *ast.Rule) string { return rule.Head.Ref()[0].Value.String() }

func (d *reader) head(head *ast.Head, exact bool) {
	for _, arg := range head.Args {
		d.term(arg, exact)
	}
	for _, key := range head.Ref()[1:] {
		d.term(key, exact)
	}
	if head.Key != nil {
		d.term(head.Key, exact)
	}
	if head.Value != nil {
		d.term(head.Value, exact)
	}
}

func (d *reader) body(body ast.Body, exact bool) {
	for _, e := range body {
		d.expr(e, exact)
	}
}

func (d *reader) expr(e *ast.Expr, exact bool) {
	if len(e.With) > 0 {
		d.fault(e.Location, `a rule reads the facts as they are; "with" belongs in tests`)
	}
	if e.IsCall() && e.Operator().String() == ast.Print.Name {
		d.fault(e.Location, `"print" says nothing here; a finding says it, by its figures`)
	}
	exact = exact || e.Negated
	switch terms := e.Terms.(type) {
	case *ast.SomeDecl:
		if call, ok := terms.Symbols[0].Value.(ast.Call); ok {
			for _, pattern := range call[1 : len(call)-1] {
				if _, named := variable(pattern); !named {
					d.term(pattern, exact)
				}
			}
			var key *ast.Term
			if len(call) == 4 {
				key = call[1]
			}
			d.domain(call[len(call)-1], key, call[len(call)-2], exact)
		}
	case *ast.Every:
		d.inner++
		d.domain(terms.Domain, terms.Key, terms.Value, exact)
		d.body(terms.Body, exact)
		d.inner--
	case *ast.Term:
		d.term(terms, exact)
	case []*ast.Term:
		if e.IsAssignment() || e.IsEquality() {
			for _, named := range namings(e) {
				if d.stands(named.value).kind != nothing {
					d.held(named.value, exact)
					return
				}
			}
		}
		d.call(terms, exact)
	default:
		d.fault(e.Location, "%s is a form that rules do not use", e)
	}
}

// call reads an operator or function with its arguments.
func (d *reader) call(terms []*ast.Term, exact bool) {
	if ref, ok := terms[0].Value.(ast.Ref); ok {
		if head, ok := ref[0].Value.(ast.Var); ok && (d.defined[string(head)] || head == "data") {
			d.ref(ref, terms[0].Location, exact)
		}
		if ref.String() == memberOf && d.member(terms[2], terms[1], exact) {
			d.term(terms[1], exact)
			return
		}
	}
	for _, arg := range terms[1:] {
		d.term(arg, exact)
	}
}

// domain reads what a variable goes over: the subjects of a collection, picked
// by a key, or plain values.
func (d *reader) domain(t, key, value *ast.Term, exact bool) {
	if _, plain := variable(value); !plain || d.stands(t).kind != manyOf {
		if !d.member(t, value, exact) {
			d.term(t, exact)
		}
		return
	}
	d.held(t, exact)
	if d.inner > 0 {
		d.fault(t.Location, "a rule looks at one subject at a time; it goes over no %s within another condition", d.own.name)
	}
	d.picked(key)
}

// member notes that a definition is asked for a member; false if it is none of
// the package's.
func (d *reader) member(set, of *ast.Term, exact bool) bool {
	name, ok := variable(set)
	if !ok || !d.defined[name] || d.stands(set).kind != nothing {
		return false
	}
	d.use(name, of, set.Location, exact)
	return true
}

// use notes that a definition is used. A variable within another condition may
// be another one than that of the same name around it.
func (d *reader) use(name string, of *ast.Term, at *ast.Location, exact bool) {
	u := use{name: name, exact: exact, at: at}
	if d.inner == 0 {
		u.by = d.address(of)
	}
	d.into.uses = append(d.into.uses, u)
}

// held reads a term that may stand for a collection or subject, because a name
// is given to it.
func (d *reader) held(t *ast.Term, exact bool) {
	if ref, ok := t.Value.(ast.Ref); ok {
		d.ref(ref, t.Location, exact)
		return
	}
	if _, ok := t.Value.(ast.Var); !ok {
		d.term(t, exact)
	} else if d.stands(t).kind == nothing {
		d.term(t, exact)
	}
}

// term reads a term whose whole value is used.
func (d *reader) term(t *ast.Term, exact bool) {
	if h := d.stands(t); h.kind != nothing {
		d.fault(t.Location, "%s is used whole, so that it cannot be seen which facts are read; name each fact", t)
		return
	}
	switch v := t.Value.(type) {
	case ast.Var:
		if d.defined[string(v)] {
			d.use(string(v), nil, t.Location, exact)
		}
	case ast.Ref:
		d.ref(v, t.Location, exact)
	case ast.Call:
		d.call(v, exact)
	case *ast.Array:
		v.Foreach(func(item *ast.Term) { d.term(item, exact) })
	case ast.Set:
		v.Foreach(func(item *ast.Term) { d.term(item, exact) })
	case ast.Object:
		v.Foreach(func(key, value *ast.Term) { d.term(key, exact); d.term(value, exact) })
	case *ast.ArrayComprehension:
		d.comprehension(v.Body, v.Term)
	case *ast.SetComprehension:
		d.comprehension(v.Body, v.Term)
	case *ast.ObjectComprehension:
		d.comprehension(v.Body, v.Key, v.Value)
	case ast.Null, ast.Boolean, ast.Number, ast.String:
	default:
		d.fault(t.Location, "%s is a form that rules do not use", t)
	}
}

func (d *reader) comprehension(body ast.Body, of ...*ast.Term) {
	d.inner++
	for _, x := range of {
		d.term(x, true)
	}
	d.body(body, true)
	d.inner--
}

// ref follows a reference from the input, a holder, data or a definition.
func (d *reader) ref(ref ast.Ref, at *ast.Location, exact bool) {
	head, ok := ref[0].Value.(ast.Var)
	if !ok {
		d.term(ref[0], exact)
	}
	for _, key := range ref[1:] {
		d.term(key, exact)
	}
	switch {
	case !ok:
	case head == "data":
		d.fault(at, "%s is outside the rule's package; a rule reads nothing else", ref)
	case d.defined[string(head)]:
		var of *ast.Term
		if len(ref) > 1 {
			of = ref[1]
		}
		d.use(string(head), of, at, exact)
	default:
		d.path(ref, d.start(head), at, exact)
	}
}

// path follows a reference from a holder down to a fact.
func (d *reader) path(ref ast.Ref, h holder, at *ast.Location, exact bool) {
	for _, key := range ref[1:] {
		if h.kind == nothing {
			return
		}
		if h.kind == manyOf {
			d.picked(key)
		}
		next, found := d.step(h, key)
		switch {
		case found != nil:
			d.into.reads = append(d.into.reads, read{of: h.of, fact: *found, at: at, exact: exact})
		case next.kind == nothing:
			d.lost(h, key, at)
			return
		case next.kind == manyOf && next.of != d.own:
			d.fault(at, "a rule on %s reads no %s; the facts of other subjects that it needs are joined to its own", d.own.name, next.of.name)
			return
		}
		h = next
	}
}

// picked notes by what a subject is picked from its collection.
func (d *reader) picked(key *ast.Term) {
	by := d.address(key)
	switch {
	case key == nil:
		by = "no id"
	case by == "":
		by = key.String()
	}
	d.into.keys[by] = true
}

// lost says why a key leads nowhere.
func (d *reader) lost(h holder, key *ast.Term, at *ast.Location) {
	word, ok := key.Value.(ast.String)
	switch {
	case !ok:
		d.fault(at, "a fact is read by its name, not by %s", key)
	case h.kind == theInput:
		d.fault(at, "rules do not read input.%s%s", string(word), meant(string(word), names(d.kinds)))
	case string(word) == openFacts:
		d.fault(at, "what is open is the engine's to judge; no rule reads it")
	default:
		d.fault(at, "%s has no fact %q%s", h.of.name, string(word), meant(string(word), names(h.of.facts)))
	}
}

// title is the name of a fact as metadata writes it for a rule on own.
func (r read) title(own *collection) string {
	if r.of != own {
		return r.of.name + "." + r.fact.name
	}
	return r.fact.name
}
