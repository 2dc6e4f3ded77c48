package circuit

import (
	"cmp"
	"math"
	"slices"

	"driploop/model/curve"
	"driploop/model/figure"
	"driploop/model/record"
)

// bound is a value with what it would be if everything that is not recorded of
// the devices were as bad, or as good, as it can be.
type bound struct{ worst, best float64 }

func sureOf(v float64) bound { return bound{v, v} }

// sure tells whether what is not recorded makes no difference.
func (b bound) sure() bool {
	return b.worst == b.best || !math.IsInf(b.worst, 0) && alike(b.worst, b.best)
}

// ceiling is how bad it can be at most, where that is known.
func (b bound) ceiling() bound {
	if math.IsInf(b.worst, 1) {
		return b
	}
	return sureOf(b.worst)
}

func (b bound) least(o bound) bound    { return bound{min(b.worst, o.worst), min(b.best, o.best)} }
func (b bound) greatest(o bound) bound { return bound{max(b.worst, o.worst), max(b.best, o.best)} }

// release is the time-current curve of a device, or why there is none.
type release struct {
	curve curve.Curve
	gates []curve.Gate
	gaps  []figure.Gap
}

// releaseOf returns the curve of a device: the points in the record, else the gates
// of its family and rating.
func (a *analysis) releaseOf(i int) *release {
	if r := a.releases[i]; r != nil {
		return r
	}
	r := &release{}
	c := a.net.branches[i].comp
	rating, hasRating := sane(&c.Rating)
	family, hasFamily := c.Curve.Get()
	if !hasRating {
		r.gaps = append(r.gaps, figure.Missing(c.Path+".rating"))
	}
	if !hasFamily && len(c.CurvePoints) == 0 {
		r.gaps = append(r.gaps, figure.Missing(c.Path+".curve"))
	}
	kind := kindOfDevice{family, rating}
	if known := a.kinds[kind]; known != nil && len(r.gaps)+len(c.CurvePoints) == 0 {
		a.releases[i] = known
		return known
	}
	if len(r.gaps) == 0 {
		found, err := curve.Of(family, rating)
		if len(c.CurvePoints) > 0 {
			found, err = givenCurve(c, rating)
		}
		if err != nil {
			r.gaps = append(r.gaps, figure.Gap{Field: c.Path + ".curve_points", Why: err.Error()})
		}
		r.curve, r.gates = found, found.Gates()
	}
	if len(r.gaps)+len(c.CurvePoints) == 0 {
		a.kinds[kind] = r
	}
	a.releases[i] = r
	return r
}

// kindOfDevice is what its curve hangs on.
type kindOfDevice struct {
	family string
	rating float64
}

// givenCurve returns the curve of the points that the record gives. Of a fuse they
// are those of a melting element; of a breaker any release may act between two,
// which leaves the widest range of times.
func givenCurve(c *record.Component, rating float64) (curve.Curve, error) {
	release := curve.Instant
	if c.Kind.V == "fuse" {
		release = curve.Melt
	}
	var gates []curve.Gate
	for _, p := range c.CurvePoints {
		amps, ok := sane(&p.Current)
		if !ok {
			return curve.Curve{}, &curve.NoCurve{Why: "a point of its curve has no current"}
		}
		g := curve.Gate{Multiple: amps / rating, LeastS: math.NaN(), GreatestS: math.Inf(1), Release: release, Trust: "as recorded"}
		if v, ok := number(&p.Least); ok {
			g.LeastS = v
		}
		if v, ok := sane(&p.Greatest); ok {
			g.GreatestS = v
		}
		gates = append(gates, g)
	}
	slices.SortFunc(gates, func(g, h curve.Gate) int { return cmp.Compare(g.Multiple, h.Multiple) })
	soonest := 0.0
	for k := range slices.Backward(gates) { // more current opens no later
		if math.IsNaN(gates[k].LeastS) {
			gates[k].LeastS = soonest
		}
		soonest = gates[k].LeastS
	}
	for k := 1; k < len(gates); k++ {
		if math.IsInf(gates[k].GreatestS, 1) {
			gates[k].GreatestS = gates[k-1].GreatestS
		}
	}
	return curve.Given(c.ID, rating, "the maker's curve, "+c.Path+".curve_points", gates...)
}

// opens returns within which times a device opens at a current; +Inf where it does
// not, or need not, open. It returns false if there is no telling.
func (r *release) opens(amps float64) (curve.Opening, bool) {
	if len(r.gaps) > 0 {
		return curve.Opening{}, false
	}
	o, err := r.curve.OpeningTime(amps)
	return o, err == nil
}

// times returns those bounds; a device of which there is no telling could open at
// once or never.
func (r *release) times(amps float64) (least, greatest float64) {
	if o, ok := r.opens(amps); ok {
		return o.LeastS, o.GreatestS
	}
	return 0, math.Inf(1)
}

// cut returns what a device makes of a current; one without a curve could open at
// once or never.
func (r *release) cut(amps float64) cleared {
	o, ok := r.opens(amps)
	if !ok {
		open := bound{math.Inf(1), 0}
		return cleared{open, open, open, open}
	}
	low, high := o.Energies()
	c := cleared{sureOf(o.LeastS), sureOf(o.GreatestS), sureOf(low), sureOf(high)}
	if math.IsNaN(low) {
		c.least = sureOf(math.Inf(1))
	}
	if math.IsNaN(high) {
		c.most = sureOf(math.Inf(1))
		if !math.IsInf(o.GreatestS, 1) { // it opens, after some energy that is not known
			c.most.best = c.least.best
		}
	}
	return c
}

// gateAmps adds the currents of a fault at which a device that carries a share of
// them stands at one of its gates, within a range.
func (r *release) gateAmps(amps []float64, share, low, high float64) []float64 {
	if len(r.gaps) > 0 {
		return amps
	}
	for i := range r.gates {
		if v := r.gates[i].Multiple * r.curve.RatingA; v > low*share && v < high*share {
			amps = append(amps, v/share)
		}
	}
	return amps
}
