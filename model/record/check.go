package record

import (
	"regexp"
	"slices"
	"strings"

	"driploop/model/record/internal/tree"
	"driploop/model/verdict"
)

// reference is a text that has to name something, checked once all names are
// known.
type reference struct {
	to   target
	name string
	at   tree.Extent
}

func (d *decoder) refer(to target, name string, at tree.Extent) {
	if to != nothing && !d.muted {
		d.refs = append(d.refs, reference{to, name, at})
	}
}

// check joins what was read: names to what they name, conductors to terminals.
func (d *decoder) check() {
	r := d.r
	r.spaces, r.components = byName(r.Spaces), byName(r.Components)
	r.conductors, r.bundles = byName(r.Conductors), byName(r.Bundles)
	for _, ref := range d.refs {
		if d.stopped {
			return
		}
		d.resolve(ref)
	}
	for _, c := range r.Components {
		d.posts(c)
	}
	for _, c := range r.Conductors {
		from, to := d.landing(c.From), d.landing(c.To)
		if from && to {
			d.apart(c)
		}
		d.studs(c)
	}
}

func byName[T any](list []*T) map[string]*T {
	m := make(map[string]*T, len(list))
	for _, v := range list {
		m[any(v).(entrant).entry().ID] = v
	}
	return m
}

func ids[T any](list []*T) []string {
	names := make([]string, len(list))
	for i, v := range list {
		names[i] = any(v).(entrant).entry().ID
	}
	return names
}

// resolve checks one reference.
func (d *decoder) resolve(ref reference) {
	r := d.r
	switch ref.to {
	case toSpace:
		exists(d, ref, r.spaces[ref.name] != nil, "space", r.Spaces)
	case toConductor:
		exists(d, ref, r.conductors[ref.name] != nil, "conductor", r.Conductors)
	case toPenetration:
		named := func(p *Penetration) bool { return p.ID == ref.name }
		exists(d, ref, slices.ContainsFunc(r.Penetrations, named), "penetration", r.Penetrations)
	case toBundle:
		d.bundle(ref)
	case toComponent:
		exists(d, ref, r.components[ref.name] != nil, "component", r.Components)
	case toLoad:
		d.kindred(ref, "load", func(k Kind) bool { return k.Load })
	case toSwitch:
		d.kindred(ref, "switch, breaker or relay", func(k Kind) bool { return k.Switching || k.Name == "breaker" })
	case toCommand:
		if commands := d.commands(); !slices.Contains(commands, ref.name) {
			d.missing(ref, "command of a link or coil", commands)
		}
	case toSubject:
		d.subject(ref)
	}
}

// exists reports a reference to none of the parts that could be meant.
func exists[T any](d *decoder, ref reference, ok bool, what string, parts []*T) {
	if !ok {
		d.missing(ref, what, ids(parts))
	}
}

func (d *decoder) missing(ref reference, what string, names []string) {
	d.faultIn(ref.at.Range(), "%q is no %s of this record; %s", clip(ref.name), what, choices(ref.name, names, "the record has"))
}

// kindred checks a reference to a component of some kinds.
func (d *decoder) kindred(ref reference, what string, fits func(Kind) bool) {
	c := d.r.components[ref.name]
	if c != nil && (!c.Kind.Is() || fits(KindOf(c.Kind.V))) {
		return
	}
	var names []string
	for _, c := range d.r.Components {
		if fits(KindOf(c.Kind.V)) {
			names = append(names, c.ID)
		}
	}
	if c == nil {
		d.missing(ref, what, names)
		return
	}
	d.faultIn(ref.at.Range(), "%q is a %s and no %s; %s", ref.name, c.Kind.V, what, choices(ref.name, names, "the record has"))
}

// bundle checks the bundle of a segment. Records that list no bundles may name
// them freely.
func (d *decoder) bundle(ref reference) {
	if ref.name == noneWord {
		return
	}
	if len(d.r.Bundles) == 0 {
		if !plainID(ref.name) {
			d.faultIn(ref.at.Range(), "%q is no id of a bundle; use %s", clip(ref.name), idHelp)
		}
		return
	}
	exists(d, ref, d.r.bundles[ref.name] != nil, "bundle", d.r.Bundles)
}

// commands lists what the links and coils answer to.
func (d *decoder) commands() []string {
	var all []string
	add := func(when Text) {
		if w, ok := when.Get(); ok && !slices.Contains(all, w) {
			all = append(all, w)
		}
	}
	for _, c := range d.r.Components {
		for _, l := range c.Links {
			add(l.When)
		}
		for _, coil := range c.Coils {
			add(coil.When)
		}
	}
	return all
}

// landing checks that a conductor's terminal exists.
func (d *decoder) landing(t Terminal) bool {
	if t.Component == "" {
		return false
	}
	c := d.r.components[t.Component]
	if c == nil {
		d.faultIn(t.At, "%q is no component of this record; %s", clip(t.Component), choices(t.Component, ids(d.r.Components), "the record has"))
		return false
	}
	if !c.Kind.Is() {
		return false // the fault is the kind's
	}
	if hasTerminal(c, KindOf(c.Kind.V), t.Name) {
		return true
	}
	if len(c.Links)+len(c.Coils) == 0 && len(KindOf(c.Kind.V).Terminals) == 0 {
		d.faultIn(t.At, "the %s %q has no terminals yet; list the paths inside it under \"links\", such as {between: [in, out]}", c.Kind.V, c.ID)
		return false
	}
	d.noTerminal(c, t.Name, t.At)
	return false
}

// posts checks that the posts of a component stand at terminals that it has.
func (d *decoder) posts(c *Component) {
	if len(c.Posts) == 0 || !c.Kind.Is() {
		return
	}
	kind := KindOf(c.Kind.V)
	for _, p := range c.Posts {
		if !hasTerminal(c, kind, p.Terminal) {
			d.noTerminal(c, p.Terminal, p.At)
		}
	}
}

func (d *decoder) noTerminal(c *Component, name string, at verdict.Range) {
	names, _ := TerminalsOf(c)
	d.faultIn(at, "the %s %q has no terminal %q; %s", c.Kind.V, c.ID, clip(name), choices(name, names, "it has"))
}

// apart checks that a conductor does not lead back to where it starts.
func (d *decoder) apart(c *Conductor) {
	if c.From.Component != c.To.Component {
		return
	}
	switch on := d.r.components[c.From.Component]; {
	case c.From.Name == c.To.Name:
		d.faultIn(c.To.At, "%q goes from %s to itself; name the terminal at its other end", c.ID, c.From)
	case KindOf(on.Kind.V).OneNode:
		d.faultIn(c.To.At, "%q begins and ends on the %s %q, whose studs are one point; name the component at its other end", c.ID, on.Kind.V, on.ID)
	}
}

var endPath = regexp.MustCompile(`^conductors\.([^.]+)\.ends\.(from|to)$`)

// subject checks the path of a waiver.
func (d *decoder) subject(ref reference) {
	if _, ok := d.r.Places.Find(ref.name); ok {
		return
	}
	if m := endPath.FindStringSubmatch(ref.name); m != nil && d.r.conductors[m[1]] != nil {
		return
	}
	section, id, _ := strings.Cut(ref.name, ".")
	names := map[string][]string{
		"spaces": ids(d.r.Spaces), "components": ids(d.r.Components), "conductors": ids(d.r.Conductors),
		"bundles": ids(d.r.Bundles), "penetrations": ids(d.r.Penetrations), "cases": ids(d.r.Cases),
	}[section]
	if id, _, _ = strings.Cut(id, "."); slices.Contains(names, id) {
		d.faultIn(ref.at.Range(), "%q is no part of this record: %s.%s is, and has no such part; name %[2]s.%[3]s", clip(ref.name), section, id)
		return
	}
	if w, ok := nearest(id, names); ok {
		d.faultIn(ref.at.Range(), "%q is no part of this record; did you mean \"%s.%s\"?", clip(ref.name), section, w)
		return
	}
	d.faultIn(ref.at.Range(), "%q is no part of this record; write a path such as conductors.P4 or vessel", clip(ref.name))
}
