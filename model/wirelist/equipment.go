package wirelist

import (
	"fmt"
	"slices"
	"strings"

	"driploop/model/record"
)

// equipment is a component that the list names.
type equipment struct {
	id, kind, name string
	understood     bool
	taken          int // terminals given to it
	terminals      []string
}

// onOnePoint reports whether two terminals are studs of one bar.
func (i *importer) onOnePoint(a, b string) bool {
	a, _, _ = strings.Cut(a, ".")
	b, _, _ = strings.Cut(b, ".")
	return a == b && record.KindOf(i.parts[a].kind).OneNode
}

// place is the terminal that an end lands on; the component is noted.
func (i *importer) place(text, terminal, kind, where, role string, starts bool) string {
	name, named := text, ""
	if terminal == "" {
		name, named = splitPlace(text)
	}
	id := identifier(name)
	if exact := identifierKeepingCase(name); kind != "" && exact == name {
		id = exact // the list of a record, which knows its ids
	}
	if id == "" || id == "unknown" || id == "none" {
		id = "unnamed"
		i.note("%s: %q names no equipment", where, oneLine(text))
	}
	part := i.parts[id]
	if part == nil {
		part = &equipment{id: id, name: name}
		part.kind, part.understood = kindOf(name)
		if record.KindOf(kind).Name != "" {
			part.kind, part.understood = kind, true
		}
		if !part.understood {
			i.note("%s: what %q is was not understood; it is written as a busbar, which joins all that lands on it: look", where, oneLine(name))
		}
		i.parts[id] = part
		i.order = append(i.order, id)
	}
	if terminal != "" {
		named = terminalWord(terminal)
		if k := record.KindOf(part.kind); k.OneNode || k.ByLinks {
			named = identifierKeepingCase(terminal) // any name will do
		}
	}
	if named == "" {
		named = terminalFor(part.kind, role, starts, part.taken)
		i.note("%s: no terminal of %q is named; taken as %s", where, oneLine(text), named)
	} else if good := known(part.kind, named); good != named {
		i.note("%s: a %s has no terminal %s; taken as %s", where, part.kind, named, good)
		named = good
	}
	part.taken++
	if !slices.Contains(part.terminals, named) {
		part.terminals = append(part.terminals, named)
	}
	return id + "." + named
}

// known returns a terminal that the kind has: the one named, or one like it.
func known(kind, terminal string) string {
	k := record.KindOf(kind)
	if k.OneNode || k.ByLinks || slices.Contains(k.Terminals, terminal) || terminal == record.CaseTerminal && k.Case {
		return terminal
	}
	if len(k.Terminals) == 2 {
		if slices.Contains([]string{"neg", "out", "load", "2", "b", "output"}, terminal) {
			return k.Terminals[1]
		}
		return k.Terminals[0]
	}
	return terminal
}

// linksOf declares the terminals of a thing that has those which its links name.
func linksOf(p *equipment) string {
	k := record.KindOf(p.kind)
	if !k.ByLinks || len(p.terminals) == 0 {
		return ""
	}
	strange := slices.ContainsFunc(p.terminals, func(t string) bool { return !slices.Contains(k.Terminals, t) && t != record.CaseTerminal })
	if !strange {
		return ""
	}
	names := slices.Clone(p.terminals)
	if len(names) == 1 {
		names = append(names, "other")
	}
	var links []string
	for _, t := range names[1:] {
		links = append(links, fmt.Sprintf("{between: [%s, %s], when: %s}", names[0], t, t))
	}
	return ", links: [" + strings.Join(links, ", ") + "]"
}
