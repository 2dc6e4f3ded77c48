package facts

// Vessel is the facts of the boat as a whole.
type Vessel struct {
	Subject
	Hull       *string  `json:"hull,omitempty"`
	LengthMM   *float64 `json:"length_mm,omitempty"`
	Propulsion *string  `json:"propulsion,omitempty"`
	Auxiliary  *string  `json:"auxiliary,omitempty"`
	Service    *string  `json:"service,omitempty"`
	Built      *string  `json:"built,omitempty"`
	// BuiltOn is Built, or empty where the record does not tell: for what a text
	// lets older boats go, which silence never frees.
	BuiltOn string  `json:"built_on"`
	Engines *int    `json:"engines,omitempty"`
	SystemV float64 `json:"system_v"`

	// Petrol tells whether a petrol engine other than an outboard is installed.
	Petrol *bool `json:"petrol,omitempty"`

	Earthing *string `json:"earthing,omitempty"`
	// EarthLinks is the number of connections from DC negative to ground that
	// the record states, EarthLinksSeen that of the ones it shows as conductors.
	EarthLinks     *int  `json:"earth_links,omitempty"`
	EarthLinksSeen int   `json:"earth_links_seen"`
	Detector       *bool `json:"detector,omitempty"`
	// NegativeGroups is the number of separate groups in which the negatives of
	// batteries, sources and loads meet; one is what a single main point gives.
	NegativeGroups *int `json:"negative_groups,omitempty"`
	// StrayNegatives names the negative terminals outside the largest group.
	StrayNegatives []string `json:"stray_negatives"`
	Cranking
	Pumping
}

func (b *Builder) vessel() *Vessel {
	v := &b.made.vessel
	v.Subject, v.StrayNegatives = b.subject("vessel"), []string{}
	s, from := &v.Subject, &b.record.Vessel
	put(s, "hull", &v.Hull, &from.Hull, "hull")
	putMeasure(s, "length_mm", &v.LengthMM, &from.Length, "length")
	put(s, "propulsion", &v.Propulsion, &from.Propulsion, "propulsion")
	put(s, "auxiliary", &v.Auxiliary, &from.Auxiliary, "auxiliary")
	put(s, "service", &v.Service, &from.Service, "service")
	putDate(s, "built", &v.Built, &from.Built, "built")
	if v.Built != nil {
		v.BuiltOn = *v.Built
	}
	put(s, "engines", &v.Engines, &from.Engines, "engines")
	v.SystemV = from.System.V.Base
	v.Petrol = petrol(s, v)

	put(s, "earthing", &v.Earthing, &from.Earthing, "earthing")
	put(s, "detector", &v.Detector, &from.Detector, "detector")
	put(s, "earth_links", &v.EarthLinks, &from.EarthLinks, "earth_links")
	v.EarthLinksSeen = b.earthLinks()
	b.cranking(s, &v.Cranking)
	groups := b.negativeGroups()
	if len(groups) == 0 {
		s.because("no negative terminal is wired in the record", "negative_groups")
		return v
	}
	v.NegativeGroups = s.count(len(groups))
	for _, group := range groups[1:] {
		v.StrayNegatives = append(v.StrayNegatives, group...)
	}
	return v
}

// petrol decides whether an installed petrol engine is aboard: a petrol inboard
// or sterndrive settles it, else the auxiliary engine has to be known.
func petrol(s *Subject, v *Vessel) *bool {
	if v.Propulsion != nil && (*v.Propulsion == "petrol-inboard" || *v.Propulsion == "petrol-sterndrive") {
		return s.flag(true)
	}
	if v.Auxiliary != nil && *v.Auxiliary == "petrol" {
		return s.flag(true)
	}
	if v.Propulsion != nil && v.Auxiliary != nil {
		return s.flag(false)
	}
	if v.Propulsion == nil {
		s.follow("petrol", "propulsion")
	}
	if v.Auxiliary == nil {
		s.follow("petrol", "auxiliary")
	}
	return nil
}

// earthLinks counts the conductors between a ground point and the rest of the
// DC negative; bonding conductors are not such links.
func (v *survey) earthLinks() int {
	isGround := func(on *part) bool { return on != nil && on.Kind.V == "ground" }
	n := 0
	for i := range v.wires {
		w := &v.wires[i]
		if w.Role.V == "negative" && isGround(w.from) != isGround(w.to) {
			n++
		}
	}
	return n
}
