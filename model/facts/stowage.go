package facts

import (
	"slices"
	"strings"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/physics"
	"driploop/model/quantity"
	"driploop/model/record"
)

// Stowage is where a battery stands and what its place has to do for it.
type Stowage struct {
	// OpenToAir: its space is open to the atmosphere.
	OpenToAir *bool `json:"open_to_air,omitempty"`
	// VentNeededCM2 is the opening, inlet and outlet each, that lets the hydrogen of
	// boost charging out by itself.
	VentNeededCM2 *float64 `json:"vent_needed_cm2,omitempty"`
	// PetrolNear: a petrol tank or engine stands in its space.
	PetrolNear     *bool   `json:"petrol_near,omitempty"`
	IsolationMeans *string `json:"isolation_means,omitempty"`
	// CrankingGiven: the record gives its cold-cranking current.
	CrankingGiven bool `json:"cranking_given"`
}

// stowage sets where a battery stands; its capacity and chemistry are set before.
func stowage(s *Subject, f *Battery, r *record.Record, c *record.Component) {
	space := r.Space(c.Space.V)
	if space == nil {
		space = &record.Space{Entry: record.Entry{Path: s.field("space")}}
	}
	putTruth(s, "open_to_air", &f.OpenToAir, truthOf(space.OpenToAir, below(space, "open_to_air")))
	putTruth(s, "petrol_near", &f.PetrolNear, petrolIn(r, space))
	put(s, "isolation_means", &f.IsolationMeans, &c.Isolation.Means, "isolation.means")
	f.CrankingGiven = c.Cranking.Is()
	ventNeeded(s, f)
}

// petrolIn tells whether a petrol tank or engine stands in a space: never on a
// boat without a petrol engine.
func petrolIn(r *record.Record, space *record.Space) figure.Truth {
	if space.PetrolSource.Is() {
		return figure.Truth{Value: slices.Contains(space.PetrolSource.V, "tank") || slices.Contains(space.PetrolSource.V, "engine"), Known: true}
	}
	v := &r.Vessel
	if v.Propulsion.Is() && v.Auxiliary.Is() && !strings.HasPrefix(v.Propulsion.V, "petrol") && v.Auxiliary.V != "petrol" {
		return figure.False()
	}
	return figure.OpenTruth(figure.Missing(below(space, "petrol_source")))
}

// gasCells names the cells of a chemistry as the standard for ventilation does.
func gasCells(chemistry string) (physics.GasCell, bool) {
	switch chemistry {
	case "flooded":
		return physics.VentedLead, true
	case "agm", "gel":
		return physics.ValveLead, true
	}
	return "", false
}

// leadCellV is the nominal voltage of a lead cell, V.
const leadCellV = 2

func ventNeeded(s *Subject, f *Battery) {
	var gaps []figure.Gap
	for _, fact := range []string{"chemistry", "nominal_v", "capacity_ah"} {
		gaps = append(gaps, s.Open.Of(fact)...)
	}
	if len(gaps) > 0 {
		s.open("vent_needed_cm2", gaps...)
		return
	}
	cell, ok := gasCells(*f.Chemistry)
	if !ok {
		s.open("vent_needed_cm2", figure.Because("a lithium battery gives off no hydrogen in normal use"))
		return
	}
	opening := physics.VentOpening(physics.HydrogenFlow(cell, int(*f.NominalV/leadCellV), *f.CapacityAh, true))
	var mm2 *float64
	putFigure(s, "vent_needed_cm2", &mm2, opening)
	if mm2 != nil {
		f.VentNeededCM2 = ptr(quantity.New(*mm2, "mm2").In("cm2"))
	}
}

// Reach is which batteries a charging source can charge.
type Reach struct {
	// BatterySpaces lists the kinds of space in which those batteries stand;
	// SpacesKnown is known, and true, once none is missing.
	BatterySpaces []string `json:"battery_spaces"`
	SpacesKnown   *bool    `json:"spaces_known,omitempty"`
}

// reach finds the batteries on whose conductors a charging source feeds.
func reach(s *Subject, f *Reach, r *record.Record, a *circuit.Analysis, charger string) {
	f.BatterySpaces = []string{}
	for _, c := range r.Components {
		if c.Kind.V != "battery" || !charges(r, a, charger, c.ID) {
			continue
		}
		space := r.Space(c.Space.V)
		switch {
		case space == nil:
			s.lacks("spaces_known", c.Path, "space")
		case !space.Kind.Is():
			s.lacks("spaces_known", space.Path, "kind")
		case !slices.Contains(f.BatterySpaces, space.Kind.V):
			f.BatterySpaces = append(f.BatterySpaces, space.Kind.V)
		}
	}
	if !s.Open.Has("spaces_known") {
		f.SpacesKnown = ptr(true)
	}
}

// charges tells whether a source feeds a conductor that lands on a battery.
func charges(r *record.Record, a *circuit.Analysis, charger, battery string) bool {
	return slices.ContainsFunc(r.Conductors, func(c *record.Conductor) bool {
		if c.From.Component != battery && c.To.Component != battery {
			return false
		}
		result := a.Conductors[c.ID]
		return result != nil && slices.ContainsFunc(result.Feeds, func(feed circuit.Feed) bool {
			return strings.HasPrefix(feed.Source, charger+".")
		})
	})
}
