// Package curve holds the time-current behaviour of fuses and breakers as gates:
// at a multiple of its rating a device opens within a least and a greatest time.
// Standards print such gates; a single device lies anywhere between them.
package curve

import (
	"fmt"
	"math"
	"slices"
)

// Release is what opens a device at a gate.
type Release string

// The releases. Melting and thermal release take energy, so their I²t does not
// grow with the current; an instantaneous one takes none.
const (
	Melt    Release = "melt"
	Thermal Release = "thermal"
	Instant Release = "instant"
)

// Gate is one line of a time-current table.
type Gate struct {
	Multiple  float64 // of the rating
	LeastS    float64 // it opens no sooner; +Inf: it does not open
	GreatestS float64 // it opens no later; +Inf: it need not open
	Release   Release
	Trust     string
}

// Curve is the gates of one device, by ascending multiple.
type Curve struct {
	Family  string
	RatingA float64
	Source  string
	gates   []Gate
}

// NoCurve tells why there are no gates for a device.
type NoCurve struct{ Why string }

func (e *NoCurve) Error() string { return e.Why }

func noCurve(format string, args ...any) error {
	return &NoCurve{Why: fmt.Sprintf(format, args...)}
}

// Of returns the gates of a device of a family and a rating in A.
//
// Errors: *NoCurve for a family that is not held and for a rating that is none.
func Of(family string, ratingA float64) (Curve, error) {
	if !slices.Contains(Families(), family) {
		return Curve{}, noCurve("no time-current gates are held for devices of %q; there are %v", family, Families())
	}
	if err := checkRating(ratingA); err != nil {
		return Curve{}, err
	}
	c := Curve{Family: family, RatingA: ratingA, Source: sources[family]}
	for _, row := range gateRows() {
		if row.family != family || row.toA < ratingA {
			continue
		}
		// Rows for smaller ratings stand before those for larger ones.
		taken := func(g Gate) bool { return g.Multiple == row.gate.Multiple }
		if !slices.ContainsFunc(c.gates, taken) {
			c.gates = append(c.gates, row.gate)
		}
	}
	slices.SortFunc(c.gates, func(a, b Gate) int {
		if a.Multiple < b.Multiple {
			return -1
		}
		return 1
	})
	return c, nil
}

// Given returns the curve of a device whose maker gives points, such as those of
// a data sheet, in any order.
//
// Errors: *NoCurve for points that contradict themselves: a greatest time below
// the least, or a time that grows with the current.
func Given(name string, ratingA float64, source string, points ...Gate) (Curve, error) {
	if err := checkRating(ratingA); err != nil {
		return Curve{}, err
	}
	if len(points) == 0 {
		return Curve{}, noCurve("a time-current curve needs at least one point")
	}
	gates := slices.Clone(points)
	slices.SortFunc(gates, func(a, b Gate) int {
		if a.Multiple < b.Multiple {
			return -1
		}
		return 1
	})
	for i, g := range gates {
		if !(g.Multiple > 0) || math.IsInf(g.Multiple, 0) || !(g.LeastS >= 0) || !(g.GreatestS >= g.LeastS) {
			return Curve{}, noCurve("the point at %g × the rating does not run from a least to a greatest time", g.Multiple)
		}
		if i > 0 && (gates[i-1].Multiple == g.Multiple || gates[i-1].LeastS < g.LeastS || gates[i-1].GreatestS < g.GreatestS) {
			return Curve{}, noCurve("the points at %g and %g × the rating contradict each other: a device does not open later at more current", gates[i-1].Multiple, g.Multiple)
		}
	}
	return Curve{Family: name, RatingA: ratingA, Source: source, gates: gates}, nil
}

func checkRating(ratingA float64) error {
	if !(ratingA > 0) || math.IsInf(ratingA, 0) {
		return noCurve("a time-current curve needs a rating above 0 A")
	}
	return nil
}

// Gates returns the gates by ascending multiple.
func (c Curve) Gates() []Gate { return slices.Clone(c.gates) }
