package facts

import (
	"slices"

	"driploop/model/figure"
	"driploop/model/record"
)

// Reversing is what drives a load one way or the other.
type Reversing struct {
	// Reversible: it runs both ways. Of loads only motors do without the record
	// saying so.
	Reversible *bool `json:"reversible,omitempty"`
	// Stations is the number of switches, or of relays that stand for them, that
	// command which way it runs.
	Stations *int `json:"stations,omitempty"`
	// Interlocked: all that reverses it is said to keep opposite commands, or those
	// of two stations, from acting together.
	Interlocked *bool `json:"interlocked,omitempty"`
}

func reversing(s *Subject, f *Reversing, r *record.Record, c *record.Component) {
	if c.Kind.V != "motor" && !c.Reversible.Is() {
		f.Reversible = ptr(false)
	} else {
		put(s, "reversible", &f.Reversible, &c.Reversible, "reversible")
	}
	wiring := wiring{r: r}
	reversers := wiring.reversers(c)
	if len(reversers) == 0 {
		gap := figure.Because("the record shows no relay, controller or switch with commands that reverses " + c.ID)
		s.open("stations", gap)
		s.open("interlocked", gap)
		return
	}
	var locked []figure.Truth
	var stations []string
	for _, reverser := range reversers {
		locked = append(locked, truthOf(reverser.Interlocked, reverser.Path+".interlocked"))
		found, gaps := wiring.stations(reverser)
		s.openIf("stations", gaps)
		for _, id := range found {
			if !slices.Contains(stations, id) {
				stations = append(stations, id)
			}
		}
	}
	putTruth(s, "interlocked", &f.Interlocked, allOf(locked...))
	if !s.Open.Has("stations") {
		f.Stations = ptr(len(stations))
	}
}

// openIf opens a fact if there are gaps.
func (s *Subject) openIf(fact string, gaps []figure.Gap) {
	if len(gaps) > 0 {
		s.open(fact, gaps...)
	}
}

// wiring follows conductors from component to component.
type wiring struct{ r *record.Record }

// reversers returns the components with two commands or more that the current of
// a load comes to first, on either side.
func (w wiring) reversers(load *record.Component) []*record.Component {
	var found []*record.Component
	w.follow(load.ID, []string{"pos", "neg"}, func(c *record.Component, _ string) bool {
		if len(commands(c)) < 2 {
			return !record.KindOf(c.Kind.V).Switching || len(commands(c)) == 0
		}
		if !slices.Contains(found, c) {
			found = append(found, c)
		}
		return false
	})
	return found
}

// stations returns the switching components that command one with two commands
// or more: itself if it is worked by hand, else those wired to its coils.
func (w wiring) stations(c *record.Component) ([]string, []figure.Gap) {
	if c.Kind.V == "switch" {
		return []string{c.ID}, nil
	}
	inputs := inputsOf(c)
	if len(inputs) == 0 {
		return nil, []figure.Gap{{Field: c.Path + ".coils", Why: "they tell which switches command it"}}
	}
	var found []string
	w.follow(c.ID, inputs, func(on *record.Component, _ string) bool {
		if !record.KindOf(on.Kind.V).Switching {
			return true
		}
		if !slices.Contains(found, on.ID) {
			found = append(found, on.ID)
		}
		return false
	})
	if len(found) == 0 {
		return nil, []figure.Gap{figure.Because("no switch is wired to the control inputs of " + c.ID + " in the record")}
	}
	return found, nil
}

// inputsOf returns the terminals by which a relay or controller is commanded:
// those of its coils that are neither common to all of them nor on a link.
func inputsOf(c *record.Component) []string {
	uses := map[string]int{}
	for _, coil := range c.Coils {
		for _, terminal := range coil.Between {
			uses[terminal]++
		}
	}
	var inputs []string
	for _, coil := range c.Coils {
		for _, terminal := range coil.Between {
			onLink := slices.ContainsFunc(c.Links, func(l *record.Link) bool { return slices.Contains(l.Between, terminal) })
			if !onLink && (len(c.Coils) == 1 || uses[terminal] < len(c.Coils)) && !slices.Contains(inputs, terminal) {
				inputs = append(inputs, terminal)
			}
		}
	}
	return inputs
}

// commands returns the words by which the links of a component are told apart.
func commands(c *record.Component) []string {
	var words []string
	for _, l := range c.Links {
		if l.When.Is() && !slices.Contains(words, l.When.V) {
			words = append(words, l.When.V)
		}
	}
	return words
}

// follow walks from terminals of a component along conductors, and on through
// what passes current from one terminal to the other. It stops at bars, grounds,
// sources and loads, where ways of other circuits meet, and where visit says so.
func (w wiring) follow(from string, terminals []string, visit func(on *record.Component, terminal string) bool) {
	type spot struct{ component, terminal string }
	seen := map[spot]bool{}
	var ahead []record.Terminal
	for _, t := range terminals {
		ahead = append(ahead, record.Terminal{Component: from, Name: t})
	}
	for len(ahead) > 0 {
		at := ahead[0]
		ahead = ahead[1:]
		if seen[spot{at.Component, at.Name}] {
			continue
		}
		seen[spot{at.Component, at.Name}] = true
		for _, c := range w.r.Conductors {
			for _, end := range [2][2]record.Terminal{{c.From, c.To}, {c.To, c.From}} {
				far := end[1]
				if end[0].Component != at.Component || end[0].Name != at.Name || far.Component == from {
					continue
				}
				if on := w.r.Component(far.Component); on != nil && visit(on, far.Name) {
					ahead = append(ahead, beyond(on, far.Name)...)
				}
			}
		}
	}
}

// beyond returns the other terminals to which a component passes current from
// one of its own.
func beyond(c *record.Component, terminal string) []record.Terminal {
	kind := record.KindOf(c.Kind.V)
	if kind.Source || kind.Load || kind.OneNode {
		return nil
	}
	var names []string
	if len(c.Links) > 0 {
		for _, l := range c.Links {
			if slices.Contains(l.Between, terminal) {
				names = append(names, l.Between...)
			}
		}
	} else {
		names, _ = record.TerminalsOf(c)
	}
	var on []record.Terminal
	for _, name := range names {
		if name != terminal && name != record.CaseTerminal {
			on = append(on, record.Terminal{Component: c.ID, Name: name})
		}
	}
	return on
}
