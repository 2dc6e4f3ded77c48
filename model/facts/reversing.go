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

func (b *Builder) reversing(s *Subject, f *Reversing, c *record.Component) {
	if c.Kind.V != "motor" && !c.Reversible.Is() {
		f.Reversible = s.flag(false)
	} else {
		put(s, "reversible", &f.Reversible, &c.Reversible, "reversible")
	}
	reversers := b.reversers(c)
	if len(reversers) == 0 {
		s.because("the record shows no relay, controller or switch with commands that reverses "+c.ID, "stations", "interlocked")
		return
	}
	var locked []truth
	var stations []string
	told := true
	for _, reverser := range reversers {
		locked = append(locked, s.truthOf(&reverser.Interlocked, place{reverser.Path, "interlocked"}))
		found, gaps := b.stations(reverser)
		if len(gaps) > 0 {
			told = false
			s.open("stations", gaps...)
		}
		for _, id := range found {
			if !slices.Contains(stations, id) {
				stations = append(stations, id)
			}
		}
	}
	putTruth(s, "interlocked", &f.Interlocked, s.allOf(locked...))
	if told {
		f.Stations = s.count(len(stations))
	}
}

// reversers returns the components with two commands or more that the current of
// a load comes to first, on either side.
func (v *survey) reversers(load *record.Component) []*record.Component {
	if !v.commanded {
		return nil
	}
	var found []*record.Component
	v.walk(load.ID, []string{"pos", "neg"}, func(on *part) bool {
		commands := commands(on.Component)
		if len(commands) < 2 {
			return !on.kind.Switching || len(commands) == 0
		}
		if !slices.Contains(found, on.Component) {
			found = append(found, on.Component)
		}
		return false
	})
	return found
}

// stations returns the switching components that command one with two commands
// or more: itself if it is worked by hand, else those wired to its coils.
func (v *survey) stations(c *record.Component) ([]string, []figure.Gap) {
	if c.Kind.V == "switch" {
		return []string{c.ID}, nil
	}
	inputs := inputsOf(c)
	if len(inputs) == 0 {
		return nil, []figure.Gap{{Field: c.Path + ".coils", Why: "they tell which switches command it"}}
	}
	var found []string
	v.walk(c.ID, inputs, func(on *part) bool {
		if !on.kind.Switching {
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

// walk goes from terminals of a component along conductors, and on through what
// passes current from one terminal to the other. It stops at bars, grounds,
// sources and loads, where ways of other circuits meet, and where visit says so.
func (v *survey) walk(from string, terminals []string, visit func(*part) bool) {
	type spot struct {
		on       *part
		terminal string
	}
	start := v.part(from)
	seen := map[spot]bool{}
	var ahead []spot
	for _, t := range terminals {
		ahead = append(ahead, spot{start, t})
	}
	for len(ahead) > 0 {
		at := ahead[0]
		ahead = ahead[1:]
		if seen[at] {
			continue
		}
		seen[at] = true
		for _, w := range at.on.wires {
			for _, way := range [...]struct {
				near, far *part
				nearBy    string
				farBy     string
			}{{w.from, w.to, w.From.Name, w.To.Name}, {w.to, w.from, w.To.Name, w.From.Name}} {
				if way.near != at.on || way.nearBy != at.terminal || way.far == nil || way.far == start || !visit(way.far) {
					continue
				}
				for _, name := range beyond(way.far, way.farBy) {
					ahead = append(ahead, spot{way.far, name})
				}
			}
		}
	}
}

// beyond returns the other terminals to which a component passes current from
// one of its own.
func beyond(on *part, terminal string) []string {
	if on.kind.Source || on.kind.Load || on.kind.OneNode {
		return nil
	}
	var names []string
	if len(on.Links) > 0 {
		for _, l := range on.Links {
			if slices.Contains(l.Between, terminal) {
				names = append(names, l.Between...)
			}
		}
	} else {
		names, _ = record.TerminalsOf(on.Component)
	}
	return slices.DeleteFunc(slices.Clone(names), func(name string) bool { return name == terminal || name == record.CaseTerminal })
}
