package facts

import (
	"math"

	"driploop/model/physics"
	"driploop/model/quantity"
	"driploop/model/record"
)

// Joint is how well the end of a conductor is joined, sealed and placed.
type Joint struct {
	Calibrated *bool    `json:"calibrated,omitempty"` // the crimping tool
	Matching   *bool    `json:"matching,omitempty"`   // die and terminal belong together
	PullTimeS  *float64 `json:"pull_time_s,omitempty"`
	// Solder is what solder does in the joint: none, only, also or battery-lug.
	// Where the record is silent of it and names a crimping tool, it is none.
	// SolderTimes is the contact length in a soldered lug over the diameter of the
	// copper.
	Solder      *string  `json:"solder,omitempty"`
	SolderTimes *float64 `json:"solder_times,omitempty"`
	PullHeldN   *float64 `json:"pull_held_n,omitempty"`

	DamagedStrands *int `json:"damaged_strands,omitempty"`
	BrokenStrands  *int `json:"broken_strands,omitempty"`

	// Enclosure is what the connections of the component are enclosed in.
	Enclosure *string `json:"enclosure,omitempty"`
	// GuardedDrips, GuardedSplash, GuardedJets and GuardedImmersion: a seal of its
	// own or the enclosure of the component keeps that water from the joint.
	GuardedDrips     *bool `json:"guarded_drips,omitempty"`
	GuardedSplash    *bool `json:"guarded_splash,omitempty"`
	GuardedJets      *bool `json:"guarded_jets,omitempty"`
	GuardedImmersion *bool `json:"guarded_immersion,omitempty"`
	// Unlooped: the cable comes down to it without a drip loop.
	Unlooped *bool `json:"unlooped,omitempty"`

	// AnodicGapV is the difference of the anodic index of the faces that touch.
	AnodicGapV *float64 `json:"anodic_gap_v,omitempty"`
	Faces      *string  `json:"faces,omitempty"` // the two metals
}

// joining sets the facts of a joint. Those of the end itself are set before.
func (b *Builder) joining(s *Subject, f *End, on *record.Component, post *record.Post, e *record.End) {
	put(s, "calibrated", &f.Calibrated, &e.Crimp.Calibrated, "crimp.calibrated")
	put(s, "matching", &f.Matching, &e.Crimp.Matching, "crimp.matching")
	putMeasure(s, "pull_time_s", &f.PullTimeS, &e.Crimp.PullTime, "crimp.pull_time")
	putMeasure(s, "pull_held_n", &f.PullHeldN, &e.PullHeld, "pull_held")
	put(s, "damaged_strands", &f.DamagedStrands, &e.DamagedStrands, "damaged_strands")
	put(s, "broken_strands", &f.BrokenStrands, &e.BrokenStrands, "broken_strands")
	solder(s, f, e)
	guarded(s, f, e)
	putTruth(s, "unlooped", &f.Unlooped, s.allOf(s.pointed("falls", f.Falls), negated(s.pointed("drip_loop", f.DripLoop))))
	b.touching(s, f, on, post, e)
}

func solder(s *Subject, f *End, e *record.End) {
	if !e.Soldered.Is() && e.Crimp.Tool.Is() {
		f.Solder = s.word("none")
	} else {
		put(s, "solder", &f.Solder, &e.Soldered, "soldered")
	}
	var length *float64
	putMeasure(s, "solder_times", &length, &e.SolderLength, "solder_length")
	if length != nil {
		if s.derivable("solder_times", operand{"area_mm2", f.AreaMM2}) {
			f.SolderTimes = s.number(quantity.Round(*length / math.Sqrt(4**f.AreaMM2/math.Pi)))
		}
	}
}

// guarded sets against what water the joint is guarded: adhesive-lined heat
// shrink and sealant keep all of it out, an enclosure what its code says.
func guarded(s *Subject, f *End, e *record.End) {
	sealed := s.among(&e.Cover, s.own("cover"), "heat-shrink-adhesive", "sealant")
	for _, w := range [...]struct {
		fact   string
		to     **bool
		proven truth
	}{
		{"guarded_drips", &f.GuardedDrips, s.pointed("ip_drips", f.Drips)},
		{"guarded_splash", &f.GuardedSplash, s.pointed("ip_splash", f.Splash)},
		{"guarded_jets", &f.GuardedJets, s.pointed("ip_jets", f.Jets)},
		{"guarded_immersion", &f.GuardedImmersion, s.pointed("ip_immersion", f.Immersion)},
	} {
		putTruth(s, w.fact, w.to, s.anyOf(sealed, w.proven))
	}
}

// touching sets which metals touch where the terminal lies on its stud.
func (b *Builder) touching(s *Subject, f *End, on *record.Component, post *record.Post, e *record.End) {
	own, lacks := surface(&e.Metal, &e.Plating)
	material := &post.Material
	if !material.Is() {
		material = &on.StudMaterial
	}
	for _, fact := range [...]string{"faces", "anodic_gap_v"} {
		if lacks != "" {
			s.missing(fact, lacks)
		}
		if !material.Is() {
			s.lacks(fact, componentPath(on, f.Component), "stud_material")
		}
	}
	if lacks != "" || !material.Is() {
		return
	}
	metals := [2]string{own, physics.Surface(material.V, "")}
	touch := b.faces.of(metals, readFaces)
	f.Faces = &touch.said
	putFigure(s, "anodic_gap_v", &f.AnodicGapV, &touch.gap)
}

// surface returns the metal that touches, or the entry that is missing to tell.
func surface(metal, plating *record.Text) (touches, lacks string) {
	bare := physics.Surface(metal.V, "")
	switch {
	case plating.Is() && plating.V != "none":
		return plating.V, ""
	case !metal.Is():
		return "", "metal"
	case !plating.Is() && bare == metal.V:
		return "", "plating"
	}
	return bare, ""
}
