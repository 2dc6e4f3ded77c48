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

func blowing(s *Subject, f *Blowing, r *record.Record, c *record.Component, result *circuit.LoadResult) {
	space := r.Space(c.Space.V)
	switch {
	case space == nil:
		s.missing("petrol_near", "space")
	case !space.FuelVapour.Is():
		s.lacks("petrol_near", space.Path, "fuel_vapour")
	default:
		f.PetrolNear = ptr(space.FuelVapour.V == "petrol")
	}
	put(s, "before_start", &f.BeforeStart, &c.BeforeStart, "before_start")
	putTruth(s, "switch_inside", &f.SwitchInside, switchInside(r, c, result))
}

func switchInside(r *record.Record, c *record.Component, result *circuit.LoadResult) figure.Truth {
	controls := result.Switches
	if len(controls) == 0 {
		controls = slices.DeleteFunc(slices.Clone(result.Devices), func(id string) bool {
			device := r.Component(id)
			return device == nil || device.Kind.V != "breaker"
		})
	}
	if len(controls) == 0 {
		return figure.OpenTruth(figure.Because("no switch stands on the way to " + c.ID + " in the record"))
	}
	if !c.Space.Is() {
		return figure.OpenTruth(figure.Missing(c.Path + ".space"))
	}
	inside := make([]figure.Truth, len(controls))
	for i, id := range controls {
		control := r.Component(id)
		inside[i] = among(control.Space, control.Path+".space", c.Space.V)
	}
	return anyOf(inside...)
}
