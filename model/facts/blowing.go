package facts

import (
	"slices"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/record"
)

// Blowing is how a blower is put on.
type Blowing struct {
	// PetrolNear: petrol vapour can gather in its space.
	PetrolNear *bool `json:"petrol_near,omitempty"`
	// SwitchInside: a switch on its way, or without one a breaker, stands in the same
	// space.
	SwitchInside *bool `json:"switch_inside,omitempty"`
	// BeforeStart: the engine cannot be started before it runs.
	BeforeStart *bool `json:"before_start,omitempty"`
}

func (b *Builder) blowing(s *Subject, f *Blowing, c *record.Component, result *circuit.LoadResult) {
	space := b.record.Space(c.Space.V)
	switch {
	case space == nil:
		s.missing("petrol_near", "space")
	case !space.FuelVapour.Is():
		s.lacks("petrol_near", space.Path, "fuel_vapour")
	default:
		f.PetrolNear = s.flag(space.FuelVapour.V == "petrol")
	}
	put(s, "before_start", &f.BeforeStart, &c.BeforeStart, "before_start")
	putTruth(s, "switch_inside", &f.SwitchInside, b.switchInside(s, c, result))
}

func (b *Builder) switchInside(s *Subject, c *record.Component, result *circuit.LoadResult) truth {
	controls := result.Switches
	if len(controls) == 0 {
		controls = slices.DeleteFunc(slices.Clone(result.Devices), func(id string) bool {
			device := b.record.Component(id)
			return device == nil || device.Kind.V != "breaker"
		})
	}
	if len(controls) == 0 {
		return s.doubt(figure.Because("no switch stands on the way to " + c.ID + " in the record"))
	}
	if !c.Space.Is() {
		return s.unknown(place{c.Path, "space"})
	}
	inside := make([]truth, len(controls))
	for i, id := range controls {
		control := b.record.Component(id)
		inside[i] = s.among(&control.Space, place{control.Path, "space"}, c.Space.V)
	}
	return s.anyOf(inside...)
}
