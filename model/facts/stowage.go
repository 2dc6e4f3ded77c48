package facts

import (
	"slices"
	"strings"

	"driploop/model/circuit"
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
func (b *Builder) stowage(s *Subject, f *Battery, c *record.Component) {
	space := b.record.Space(c.Space.V)
	if space == nil {
		space = &record.Space{Entry: record.Entry{Path: s.field("space")}}
	}
	putTruth(s, "open_to_air", &f.OpenToAir, s.truthOf(&space.OpenToAir, below(space, "open_to_air")))
	putTruth(s, "petrol_near", &f.PetrolNear, s.petrolIn(&b.record.Vessel, space))
	put(s, "isolation_means", &f.IsolationMeans, &c.Isolation.Means, "isolation.means")
	f.CrankingGiven = c.Cranking.Is()
	ventNeeded(s, f)
}

// petrolIn tells whether a petrol tank or engine stands in a space: never on a
// boat without a petrol engine.
func (s *Subject) petrolIn(v *record.Vessel, space *record.Space) truth {
	if space.PetrolSource.Is() {
		return settled(slices.Contains(space.PetrolSource.V, "tank") || slices.Contains(space.PetrolSource.V, "engine"))
	}
	if v.Propulsion.Is() && v.Auxiliary.Is() && !strings.HasPrefix(v.Propulsion.V, "petrol") && v.Auxiliary.V != "petrol" {
		return settled(false)
	}
	return s.unknown(below(space, "petrol_source"))
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
	if f.Chemistry == nil {
		s.follow("vent_needed_cm2", "chemistry")
	}
	if !s.derivable("vent_needed_cm2", operand{"nominal_v", f.NominalV}, operand{"capacity_ah", f.CapacityAh}) || f.Chemistry == nil {
		return
	}
	cell, ok := gasCells(*f.Chemistry)
	if !ok {
		s.because("a lithium battery gives off no hydrogen in normal use", "vent_needed_cm2")
		return
	}
	opening := physics.VentOpening(physics.HydrogenFlow(cell, int(*f.NominalV/leadCellV), *f.CapacityAh, true))
	if !opening.Known {
		s.unsolved("vent_needed_cm2", opening.Gaps)
		return
	}
	f.VentNeededCM2 = s.number(quantity.New(opening.Value, "mm2").In("cm2"))
}

// Reach is which batteries a charging source can charge.
type Reach struct {
	// BatterySpaces lists the kinds of space in which those batteries stand;
	// SpacesKnown is known, and true, once none is missing.
	BatterySpaces []string `json:"battery_spaces"`
	SpacesKnown   *bool    `json:"spaces_known,omitempty"`
}

// reach finds the batteries on whose conductors a charging source feeds.
func (b *Builder) reach(s *Subject, f *Reach, charger string) {
	f.BatterySpaces = []string{}
	known := true
	for i := range b.parts {
		c := &b.parts[i]
		if c.Kind.V != "battery" || !charges(charger, c) {
			continue
		}
		space := b.record.Space(c.Space.V)
		switch {
		case space == nil:
			known = false
			s.lacks("spaces_known", c.Path, "space")
		case !space.Kind.Is():
			known = false
			s.lacks("spaces_known", space.Path, "kind")
		case !slices.Contains(f.BatterySpaces, space.Kind.V):
			f.BatterySpaces = append(f.BatterySpaces, space.Kind.V)
		}
	}
	if known {
		f.SpacesKnown = s.flag(true)
	}
}

// charges tells whether a source feeds a conductor that lands on a battery.
func charges(charger string, battery *part) bool {
	return slices.ContainsFunc(battery.wires, func(w *wire) bool {
		return slices.ContainsFunc(w.result.Feeds, func(feed circuit.Feed) bool {
			return strings.HasPrefix(feed.Source, charger+".")
		})
	})
}
