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

// layers returns the terminals on a stud and what is missing to order them.
func layers(r *record.Record, ends []string) (all []layer, gaps []figure.Gap) {
	for _, id := range ends {
		c, e, path := endOf(r, id)
		if c == nil {
			continue
		}
		l := layer{end: id, path: path, conductor: c, landed: e}
		var sized bool
		l.area, sized = nominalArea(c.Size)
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
func endOf(r *record.Record, id string) (*record.Conductor, *record.End, string) {
	at := strings.LastIndexByte(id, '.')
	if at < 0 {
		return nil, nil, ""
	}
	c, side := r.Conductor(id[:at]), id[at+1:]
	if c == nil {
		return nil, nil, ""
	}
	e := c.Ends.From
	if side == "to" {
		e = c.Ends.To
	}
	if e == nil {
		e = &record.End{}
	}
	return c, e, c.Path + ".ends." + side
}

// stacked sets the order of the terminals and the cover of a stud.
func stacked(s *Subject, f *Stacking, r *record.Record, on *record.Component, terminal string, ends []string) {
	all, gaps := layers(r, ends)
	ordered(s, f, all, gaps)
	covered(s, f, on, terminal, all)
}

func ordered(s *Subject, f *Stacking, all []layer, gaps []figure.Gap) {
	for _, upper := range all {
		for _, lower := range all {
			if upper.known && lower.known && upper.landed.Order.V > lower.landed.Order.V && upper.area > lower.area {
				f.Inverted, f.Upper, f.Lower = ptr(true), ptr(upper.end), ptr(lower.end)
				return
			}
		}
	}
	none := figure.Because("no larger terminal lies above a smaller one")
	if len(all) > 1 && len(gaps) > 0 {
		s.open("inverted", gaps...)
		none = gaps[0]
	} else {
		f.Inverted = ptr(false)
	}
	s.open("upper", none)
	s.open("lower", none)
}

// covered sets whether anything keeps metal from the stud.
func covered(s *Subject, f *Stacking, on *record.Component, terminal string, all []layer) {
	if on == nil {
		on = &record.Component{}
	}
	closed := []string{"boot", "cap", "shield"}
	by := []figure.Truth{among(on.Enclosure, on.Path+".enclosure", "fire-retardant", "watertight")}
	for _, p := range on.Posts {
		if p.Terminal == terminal {
			by = append(by, among(p.Cover, p.Path+".cover", closed...))
		}
	}
	for _, l := range all {
		by = append(by, among(l.landed.Cover, l.path+".cover", closed...))
	}
	if on.Kind.V == "battery" {
		by = append(by, figure.Truth{Value: on.TerminalsCovered.Or(false) || on.UngroundedCovered.Or(false), Known: true})
	}
	putTruth(s, "covered", &f.Covered, anyOf(by...))
}
