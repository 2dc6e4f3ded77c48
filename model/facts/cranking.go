package facts

import (
	"slices"

	"driploop/model/figure"
	"driploop/model/record"
)

// Cranking is how the cranking circuits of several petrol engines return.
type Cranking struct {
	// PetrolEngines counts the petrol engines aboard, an auxiliary one included.
	PetrolEngines *int `json:"petrol_engines,omitempty"`
	// CrankingJoined: a conductor is recorded as joining the cranking returns.
	CrankingJoined *bool `json:"cranking_joined,omitempty"`
	// CrankingLinkMM2 is the nominal area of that conductor, the greatest of
	// several; CrankingCableMM2 the greatest of those that feed a cranking motor.
	CrankingLinkMM2  *float64 `json:"cranking_link_mm2,omitempty"`
	CrankingCableMM2 *float64 `json:"cranking_cable_mm2,omitempty"`
}

func (b *Builder) cranking(s *Subject, f *Cranking) {
	petrolEngines(s, f, &b.record.Vessel)
	var links, cables []*record.Conductor
	var gaps []figure.Gap
	for i := range b.wires {
		w := &b.wires[i]
		switch {
		case w.CrossSet.Or(false):
			links = append(links, w.Conductor)
		case w.CrossSet.State == record.Unknown, w.CrossSet.State == record.Absent && mayJoin(w):
			gaps = append(gaps, figure.Missing(w.Path+".cross_set"))
		}
		if w.Role.V == "positive" && onCranking(w) {
			cables = append(cables, w.Conductor)
		}
	}
	switch {
	case len(links) > 0:
		f.CrankingJoined = s.flag(true)
	case len(gaps) == 0 && len(cables) > 0:
		f.CrankingJoined = s.flag(false)
	default:
		s.open("cranking_joined", append(gaps, figure.Because("no conductor of the record is said to join the cranking returns (cross_set)"))...)
	}
	greatest(s, "cranking_link_mm2", &f.CrankingLinkMM2, links)
	greatest(s, "cranking_cable_mm2", &f.CrankingCableMM2, cables)
}

func petrolEngines(s *Subject, f *Cranking, v *record.Vessel) {
	engines, n, known := v.Engines.V, 0, true
	switch {
	case !v.Propulsion.Is():
		known = false
		s.lacks("petrol_engines", "vessel", "propulsion")
	case slices.Contains([]string{"petrol-inboard", "petrol-sterndrive", "petrol-outboard"}, v.Propulsion.V):
		n = engines
		if !v.Engines.Is() {
			known = false
			s.lacks("petrol_engines", "vessel", "engines")
		}
	}
	switch {
	case !v.Auxiliary.Is():
		known = false
		s.lacks("petrol_engines", "vessel", "auxiliary")
	case v.Auxiliary.V == "petrol":
		n++
	}
	if known {
		f.PetrolEngines = s.count(n)
	}
}

// onCranking tells whether an end of a conductor is on a cranking motor.
func onCranking(w *wire) bool {
	for on := range w.parts {
		if on.Purpose.V == "cranking" {
			return true
		}
	}
	return false
}

// mayJoin tells whether a conductor could join the cranking returns for all that
// is said of it: a return of a cranking motor, or one between two batteries.
func mayJoin(w *wire) bool {
	if w.Role.V != "negative" {
		return false
	}
	batteries := w.from != nil && w.to != nil && w.from.Kind.V == "battery" && w.to.Kind.V == "battery"
	return batteries || onCranking(w)
}

// greatest sets the greatest nominal area of conductors; one without a size
// leaves it open.
func greatest(s *Subject, fact string, to **float64, conductors []*record.Conductor) {
	if len(conductors) == 0 {
		s.because("the record names no such conductor", fact)
		return
	}
	most, known := 0.0, true
	for _, c := range conductors {
		area, ok := nominalArea(&c.Size)
		if !ok {
			known = false
			s.lacks(fact, c.Path, "size")
		}
		most = max(most, area)
	}
	if known {
		*to = s.number(most)
	}
}
