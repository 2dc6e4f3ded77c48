package record

import (
	"slices"
	"sync"
)

// Kind describes one kind of component: what it does and where conductors land.
type Kind struct {
	Name string
	Says string // what it is

	// Its part in a circuit: exactly one is set.
	Source     bool // drives current: battery, alternator, charger, ...
	Load       bool // draws current
	Protective bool // opens by itself: fuse, breaker
	Switching  bool // opens and closes on command: switch, relay, controller
	Passive    bool // carries current: busbar, connector, ground

	// Terminals are those that every component of the kind has.
	Terminals []string
	// OneNode: all its terminals are one point of the circuit, and each may
	// have any name.
	OneNode bool
	// ByLinks: it has the terminals that its links and coils name, and the fixed
	// ones only if it has neither.
	ByLinks bool
	// Case: a bonding conductor may land on its metal case, terminal "case",
	// which is connected to none of the others.
	Case bool
}

// CaseTerminal is the terminal of a bonding conductor on a metal case.
const CaseTerminal = "case"

func poles() []string { return []string{"pos", "neg"} }

// Kinds returns all kinds of component in the order that help texts show them.
func Kinds() []Kind {
	return []Kind{
		{Name: "battery", Says: "a battery or a bank of equal batteries", Source: true, Terminals: poles()},
		{Name: "alternator", Says: "a generator driven by a propulsion engine", Source: true, Terminals: poles(), Case: true},
		{Name: "charger", Says: "a charger fed from shore, from another battery or from an engine", Source: true, Terminals: poles(), Case: true},
		{Name: "solar", Says: "solar panels with their regulator", Source: true, Terminals: poles(), Case: true},
		{Name: "generator", Says: "a generator with an engine of its own", Source: true, Terminals: poles(), Case: true},
		{Name: "switch", Says: "a switch worked by hand or by a float", Switching: true, Terminals: []string{"in", "out"}, ByLinks: true, Case: true},
		{Name: "fuse", Says: "a fuse in its holder", Protective: true, Terminals: []string{"line", "load"}},
		{Name: "breaker", Says: "a circuit breaker", Protective: true, Terminals: []string{"line", "load"}},
		{Name: "busbar", Says: "a bar, post or terminal block: studs joined to one point", Passive: true, OneNode: true},
		{Name: "motor", Says: "a motor: windlass, thruster, winch, starter", Load: true, Terminals: poles(), Case: true},
		{Name: "lamp", Says: "a lamp or a string of lamps", Load: true, Terminals: poles(), Case: true},
		{Name: "pump", Says: "a pump with its motor", Load: true, Terminals: poles(), Case: true},
		{Name: "blower", Says: "a fan or blower", Load: true, Terminals: poles(), Case: true},
		{Name: "electronics", Says: "navigation, communication, entertainment, instruments, alarms", Load: true, Terminals: poles(), Case: true},
		{Name: "heater", Says: "a heater or a heating element", Load: true, Terminals: poles(), Case: true},
		{Name: "inverter", Says: "an inverter; its direct-current side only", Load: true, Terminals: poles(), Case: true},
		{Name: "refrigerator", Says: "a refrigerator or its compressor", Load: true, Terminals: poles(), Case: true},
		{Name: "relay", Says: "a relay or solenoid: links worked by coils", Switching: true, ByLinks: true, Case: true},
		{Name: "controller", Says: "a motor controller, dimmer or switching box: links worked by commands", Switching: true, ByLinks: true, Case: true},
		{Name: "connector", Says: "a plug and socket or a joint in a conductor", Passive: true, Terminals: []string{"in", "out"}, ByLinks: true},
		{Name: "ground", Says: "the engine block, ground plate or common ground point", Passive: true, OneNode: true},
	}
}

// KindOf returns the kind with the name; the zero Kind if there is none.
func KindOf(name string) Kind {
	i := kindIndex(name)
	if i < 0 {
		return Kind{}
	}
	return kindTable()[i]
}

// kindTable and kindIndexes are the kinds and their places in the list, made once.
var (
	kindTable   = sync.OnceValue(Kinds)
	kindIndexes = sync.OnceValue(func() map[string]int {
		indexes := map[string]int{}
		for i, k := range kindTable() {
			indexes[k.Name] = i
		}
		return indexes
	})
)

// kindIndex returns the place of a kind in the list, or -1.
func kindIndex(name string) int {
	if i, ok := kindIndexes()[name]; ok {
		return i
	}
	return -1
}

// TerminalsOf returns the terminals that a component has. If it is open, it has
// those that it lists and any other name beside.
func TerminalsOf(c *Component) (names []string, open bool) {
	kind := KindOf(c.Kind.V)
	if kind.OneNode {
		for _, p := range c.Posts {
			names = append(names, p.Terminal)
		}
		return names, true
	}
	if kind.ByLinks {
		for _, l := range c.Links {
			names = append(names, l.Between...)
		}
		for _, coil := range c.Coils {
			names = append(names, coil.Between...)
		}
	}
	if len(names) == 0 {
		names = append(names, kind.Terminals...)
	}
	if kind.Case {
		names = append(names, CaseTerminal)
	}
	var once []string
	for _, n := range names {
		if !slices.Contains(once, n) {
			once = append(once, n)
		}
	}
	return once, false
}

// hasTerminal reports whether TerminalsOf lists a name of a component of some kind,
// or leaves it open.
func hasTerminal(c *Component, kind Kind, name string) bool {
	if kind.OneNode || kind.Case && name == CaseTerminal {
		return true
	}
	own := false
	if kind.ByLinks {
		for _, l := range c.Links {
			if slices.Contains(l.Between, name) {
				return true
			}
			own = own || len(l.Between) > 0
		}
		for _, coil := range c.Coils {
			if slices.Contains(coil.Between, name) {
				return true
			}
			own = own || len(coil.Between) > 0
		}
	}
	return !own && slices.Contains(kind.Terminals, name)
}

// kindSet is a set of kinds by their index in Kinds.
type kindSet uint32

// kindsOf returns the set of the named kinds.
func kindsOf(names ...string) kindSet {
	var set kindSet
	for _, name := range names {
		i := kindIndex(name)
		if i < 0 {
			panic("record: no kind " + name)
		}
		set |= 1 << i
	}
	return set
}

// kindsWhere returns the set of the kinds that fit.
func kindsWhere(fits func(Kind) bool) kindSet {
	var set kindSet
	for i, k := range kindTable() {
		if fits(k) {
			set |= 1 << i
		}
	}
	return set
}

// has reports whether the kind is in the set; the empty set means every kind.
func (s kindSet) has(kind int) bool { return s == 0 || kind < 0 || s>>kind&1 == 1 }

// names returns the kinds of the set in the order of Kinds.
func (s kindSet) names() []string {
	var names []string
	for i, k := range kindTable() {
		if s.has(i) {
			names = append(names, k.Name)
		}
	}
	return names
}
