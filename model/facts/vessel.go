package facts

import (
	"driploop/model/figure"
	"driploop/model/record"
)

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

func vessel(r *record.Record) *Vessel {
	v := &Vessel{Subject: Subject{Path: "vessel"}, StrayNegatives: []string{}}
	s, from := &v.Subject, &r.Vessel
	put(s, "hull", &v.Hull, &from.Hull, "hull")
	putMeasure(s, "length_mm", &v.LengthMM, &from.Length, "length")
	put(s, "propulsion", &v.Propulsion, &from.Propulsion, "propulsion")
	put(s, "auxiliary", &v.Auxiliary, &from.Auxiliary, "auxiliary")
	put(s, "service", &v.Service, &from.Service, "service")
	putDate(s, "built", &v.Built, from.Built, "built")
	if v.Built != nil {
		v.BuiltOn = *v.Built
	}
	put(s, "engines", &v.Engines, &from.Engines, "engines")
	v.SystemV = from.System.V.Base
	v.Petrol = petrol(s, v)

	put(s, "earthing", &v.Earthing, &from.Earthing, "earthing")
	put(s, "detector", &v.Detector, &from.Detector, "detector")
	put(s, "earth_links", &v.EarthLinks, &from.EarthLinks, "earth_links")
	v.EarthLinksSeen = earthLinks(r)
	cranking(s, &v.Cranking, r)
	groups := negativeGroups(r)
	if len(groups) == 0 {
		s.open("negative_groups", figure.Because("no negative terminal is wired in the record"))
		return v
	}
	v.NegativeGroups = ptr(len(groups))
	for _, group := range groups[1:] {
		v.StrayNegatives = append(v.StrayNegatives, group...)
	}
	return v
}

// petrol decides whether an installed petrol engine is aboard: a petrol inboard
// or sterndrive settles it, else the auxiliary engine has to be known.
func petrol(s *Subject, v *Vessel) *bool {
	if v.Propulsion != nil && (*v.Propulsion == "petrol-inboard" || *v.Propulsion == "petrol-sterndrive") {
		return ptr(true)
	}
	if v.Auxiliary != nil && *v.Auxiliary == "petrol" {
		return ptr(true)
	}
	if v.Propulsion != nil && v.Auxiliary != nil {
		return ptr(false)
	}
	s.open("petrol", append(s.Open.Of("propulsion"), s.Open.Of("auxiliary")...)...)
	return nil
}

// earthLinks counts the conductors between a ground point and the rest of the
// DC negative; bonding conductors are not such links.
func earthLinks(r *record.Record) int {
	isGround := func(t record.Terminal) bool {
		c := r.Component(t.Component)
		return c != nil && c.Kind.V == "ground"
	}
	n := 0
	for _, c := range r.Conductors {
		if c.Role.V == "negative" && isGround(c.From) != isGround(c.To) {
			n++
		}
	}
	return n
}
