package facts

import (
	"driploop/model/circuit"
	"driploop/model/record"
)

// Component is the facts that any component has.
type Component struct {
	Subject
	Kind      string  `json:"kind"`
	Electric  bool    `json:"electric"` // can spark or heat: every kind but a ground point, busbar or battery
	Space     *string `json:"space,omitempty"`
	SpaceKind *string `json:"space_kind,omitempty"`
	Exposure  *string `json:"exposure,omitempty"`
	// FuelVapour is what can gather in its space; PetrolNear whether a petrol
	// source stands in that space.
	FuelVapour *string `json:"fuel_vapour,omitempty"`
	PetrolNear *bool   `json:"petrol_near,omitempty"`

	IgnitionProtected *bool    `json:"ignition_protected,omitempty"`
	IsolationMeans    *string  `json:"isolation_means,omitempty"`
	IsolationMM       *float64 `json:"isolation_mm,omitempty"` // distance to the nearest petrol source
	IsolationOpenAir  *bool    `json:"isolation_open_air,omitempty"`
	IsolationHeight   *string  `json:"isolation_height,omitempty"`  // above, below or level with the petrol source
	WaterHeldMM       *float64 `json:"water_held_mm,omitempty"`     // by the isolating bulkhead
	BulkheadMM        *float64 `json:"bulkhead_mm,omitempty"`       // its height
	BulkheadThirdMM   *float64 `json:"bulkhead_third_mm,omitempty"` // a third of that
	SeepageM3         *float64 `json:"seepage_m3,omitempty"`        // water through it in an hour

	Ingress
	Casing

	RatedV    *float64 `json:"rated_v,omitempty"`   // nominal or rated supply voltage
	NominalV  *float64 `json:"nominal_v,omitempty"` // of the circuit it stands in
	MetalCase *bool    `json:"metal_case,omitempty"`
	Bonded    *bool    `json:"bonded,omitempty"`
	Marked    *bool    `json:"marked,omitempty"`
	RatingA   *float64 `json:"rating_a,omitempty"`
	CurrentA  *float64 `json:"current_a,omitempty"`
	SurgeA    *float64 `json:"surge_a,omitempty"`
	Opening
}

func (b *Builder) anyComponent(c *record.Component, result *circuit.ComponentResult) *Component {
	f := b.made.components.take()
	f.Subject, f.Kind = b.subject(c.Path), c.Kind.V
	f.Electric = c.Kind.V != "ground" && c.Kind.V != "busbar" && c.Kind.V != "battery"
	s := &f.Subject
	put(s, "space", &f.Space, &c.Space, "space")
	b.surroundings(s, &c.Space, &f.SpaceKind, &f.Exposure, &f.FuelVapour)
	if f.FuelVapour == nil {
		s.follow("petrol_near", "fuel_vapour")
	} else {
		f.PetrolNear = s.flag(*f.FuelVapour == "petrol")
	}
	put(s, "ignition_protected", &f.IgnitionProtected, &c.IgnitionProtected, "ignition_protected")
	isolation(s, f, &c.Isolation)
	b.ingress(s, &f.Ingress, &c.IP, s.Path, "ip")
	b.casing(s, &f.Casing, c)

	putMeasure(s, "rated_v", &f.RatedV, &c.Nominal, "nominal")
	putFigure(s, "nominal_v", &f.NominalV, &result.NominalV)
	put(s, "metal_case", &f.MetalCase, &c.MetalCase, "metal_case")
	put(s, "bonded", &f.Bonded, &c.Bonded, "bonded")
	put(s, "marked", &f.Marked, &c.Marked, "marked")
	putMeasure(s, "rating_a", &f.RatingA, &c.Rating, "rating")
	putFigure(s, "current_a", &f.CurrentA, &result.Through)
	putFigure(s, "surge_a", &f.SurgeA, &result.Surge)
	b.opening(s, &f.Opening, c)
	return f
}

// isolation sets how the component is kept from petrol.
func isolation(s *Subject, f *Component, from *record.Isolation) {
	put(s, "isolation_means", &f.IsolationMeans, &from.Means, "isolation.means")
	putMeasure(s, "isolation_mm", &f.IsolationMM, &from.Distance, "isolation.distance")
	put(s, "isolation_open_air", &f.IsolationOpenAir, &from.OpenToAir, "isolation.open_to_air")
	put(s, "isolation_height", &f.IsolationHeight, &from.Height, "isolation.height")
	putMeasure(s, "water_held_mm", &f.WaterHeldMM, &from.WaterHeld, "isolation.water_held")
	putMeasure(s, "bulkhead_mm", &f.BulkheadMM, &from.BulkheadHeight, "isolation.bulkhead_height")
	putMeasure(s, "seepage_m3", &f.SeepageM3, &from.Seepage, "isolation.seepage")
	if s.derivable("bulkhead_third_mm", operand{"bulkhead_mm", f.BulkheadMM}) {
		f.BulkheadThirdMM = s.number(*f.BulkheadMM / 3)
	}
}
