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

func cranking(s *Subject, f *Cranking, r *record.Record) {
	petrolEngines(s, f, &r.Vessel)
	var links, cables []*record.Conductor
	var gaps []figure.Gap
	for _, c := range r.Conductors {
		switch {
		case c.CrossSet.Or(false):
			links = append(links, c)
		case c.CrossSet.State == record.Unknown, c.CrossSet.State == record.Absent && mayJoin(r, c):
			gaps = append(gaps, figure.Missing(c.Path+".cross_set"))
		}
		if c.Role.V == "positive" && onCranking(r, c) {
			cables = append(cables, c)
		}
	}
	switch {
	case len(links) > 0:
		f.CrankingJoined = ptr(true)
	case len(gaps) == 0 && len(cables) > 0:
		f.CrankingJoined = ptr(false)
	default:
		s.open("cranking_joined", append(gaps, figure.Because("no conductor of the record is said to join the cranking returns (cross_set)"))...)
	}
	greatest(s, "cranking_link_mm2", &f.CrankingLinkMM2, links)
	greatest(s, "cranking_cable_mm2", &f.CrankingCableMM2, cables)
}

func petrolEngines(s *Subject, f *Cranking, v *record.Vessel) {
	engines, n := v.Engines.V, 0
	switch {
	case !v.Propulsion.Is():
		s.lacks("petrol_engines", "vessel", "propulsion")
	case slices.Contains([]string{"petrol-inboard", "petrol-sterndrive", "petrol-outboard"}, v.Propulsion.V):
		n = engines
		if !v.Engines.Is() {
			s.lacks("petrol_engines", "vessel", "engines")
		}
	}
	switch {
	case !v.Auxiliary.Is():
		s.lacks("petrol_engines", "vessel", "auxiliary")
	case v.Auxiliary.V == "petrol":
		n++
	}
	if !s.Open.Has("petrol_engines") {
		f.PetrolEngines = &n
	}
}

// onCranking tells whether an end of a conductor is on a cranking motor.
func onCranking(r *record.Record, c *record.Conductor) bool {
	return slices.ContainsFunc([]string{c.From.Component, c.To.Component}, func(id string) bool {
		on := r.Component(id)
		return on != nil && on.Purpose.V == "cranking"
	})
}

// mayJoin tells whether a conductor could join the cranking returns for all that
// is said of it: a return of a cranking motor, or one between two batteries.
func mayJoin(r *record.Record, c *record.Conductor) bool {
	if c.Role.V != "negative" {
		return false
	}
	from, to := r.Component(c.From.Component), r.Component(c.To.Component)
	batteries := from != nil && to != nil && from.Kind.V == "battery" && to.Kind.V == "battery"
	return batteries || onCranking(r, c)
}

// greatest sets the greatest nominal area of conductors; one without a size
// leaves it open.
func greatest(s *Subject, fact string, to **float64, conductors []*record.Conductor) {
	if len(conductors) == 0 {
		s.open(fact, figure.Because("the record names no such conductor"))
		return
	}
	most := 0.0
	for _, c := range conductors {
		area, ok := nominalArea(c.Size)
		if !ok {
			s.lacks(fact, c.Path, "size")
		}
		most = max(most, area)
	}
	if !s.Open.Has(fact) {
		*to = &most
	}
}
