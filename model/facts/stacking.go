package facts

import (
	"strings"

	"driploop/model/figure"
	"driploop/model/record"
)

// Stacking is how terminals lie on a stud, and what covers it.
type Stacking struct {
	// Inverted: a larger conductor's terminal lies above a smaller one's; Upper and
	// Lower name those ends.
	Inverted *bool   `json:"inverted,omitempty"`
	Upper    *string `json:"upper,omitempty"`
	Lower    *string `json:"lower,omitempty"`
	// Covered: a boot, cap, shield or closed enclosure keeps metal from it.
	Covered *bool `json:"covered,omitempty"`
	// Unguarded: neither covered nor behind a protective device.
	Unguarded *bool `json:"unguarded,omitempty"`
}

// layer is one terminal on a stud.
type layer struct {
	end, path string
	conductor *record.Conductor
	landed    *record.End
	area      float64
	known     bool // its place and its size
}

// layers adds the terminals on a stud, and returns what is missing to order them.
func (v *survey) layers(all []layer, ends []string) (_ []layer, gaps []figure.Gap) {
	for _, id := range ends {
		c, e, path := v.endOf(id)
		if c == nil {
			continue
		}
		l := layer{end: id, path: path, conductor: c, landed: e}
		var sized bool
		l.area, sized = nominalArea(&c.Size)
		l.known = sized && e.Order.Is()
		if !sized {
			gaps = append(gaps, figure.Missing(c.Path+".size"))
		}
		if !e.Order.Is() {
			gaps = append(gaps, figure.Missing(path+".order"))
		}
		all = append(all, l)
	}
	return all, gaps
}

// endOf finds the end with an id such as "P1.from".
func (v *survey) endOf(id string) (*record.Conductor, *record.End, string) {
	at := strings.LastIndexByte(id, '.')
	if at < 0 {
		return nil, nil, ""
	}
	w, side := v.wire(id[:at]), id[at+1:]
	if w == nil {
		return nil, nil, ""
	}
	e := w.Ends.From
	if side == "to" {
		e = w.Ends.To
	}
	path := endPath(w.Conductor, side, e)
	if e == nil {
		e = &record.End{}
	}
	return w.Conductor, e, path
}

// stacked sets the order of the terminals and the cover of a stud.
func (b *Builder) stacked(s *Subject, f *Stacking, on *record.Component, terminal string, ends []string) {
	var few [4]layer // lie on most
	all, gaps := b.layers(few[:0], ends)
	ordered(s, f, all, gaps)
	covered(s, f, on, terminal, all)
}

func ordered(s *Subject, f *Stacking, all []layer, gaps []figure.Gap) {
	for _, upper := range all {
		for _, lower := range all {
			if upper.known && lower.known && upper.landed.Order.V > lower.landed.Order.V && upper.area > lower.area {
				f.Inverted, f.Upper, f.Lower = s.flag(true), s.word(upper.end), s.word(lower.end)
				return
			}
		}
	}
	if len(all) > 1 && len(gaps) > 0 {
		s.open("inverted", gaps...)
		s.open("upper", gaps[0])
		s.open("lower", gaps[0])
		return
	}
	f.Inverted = s.flag(false)
	s.because("no larger terminal lies above a smaller one", "upper", "lower")
}

// covered sets whether anything keeps metal from the stud.
func covered(s *Subject, f *Stacking, on *record.Component, terminal string, all []layer) {
	if on == nil {
		on = &record.Component{}
	}
	by := append(make([]truth, 0, 8), s.among(&on.Enclosure, place{on.Path, "enclosure"}, "fire-retardant", "watertight"))
	for _, p := range on.Posts {
		if p.Terminal == terminal {
			by = append(by, s.capped(&p.Cover, p.Path))
		}
	}
	for i := range all {
		by = append(by, s.capped(&all[i].landed.Cover, all[i].path))
	}
	if on.Kind.V == "battery" {
		by = append(by, settled(on.TerminalsCovered.Or(false) || on.UngroundedCovered.Or(false)))
	}
	putTruth(s, "covered", &f.Covered, s.anyOf(by...))
}

// capped tells whether a cover keeps metal from what it is on.
func (s *Subject) capped(cover *record.Text, of string) truth {
	return s.among(cover, place{of, "cover"}, "boot", "cap", "shield")
}
