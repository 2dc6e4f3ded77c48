package remedy

import (
	"fmt"
	"slices"
	"strings"

	"driploop/model/copper"
	"driploop/model/curve"
	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/verdict"
)

// candidates lists what might clear a breach, by the mends of its rule, as
// ladders of which the smallest change comes first.
func (f *finder) candidates(breach *verdict.Verdict) [][]Cure {
	var ladders [][]Cure
	for _, mend := range breach.Rule.Mends {
		switch mend {
		case verdict.MendSize:
			ladders = append(ladders, f.sizes(breach)...)
		case verdict.MendRating:
			ladders = append(ladders, f.ratings(breach)...)
		case verdict.MendPlace:
			ladders = append(ladders, f.inTurn(breach, f.nearer))
		default:
			ladders = append(ladders, f.inTurn(breach, func(left *verdict.Verdict) []Cure { return f.entry(left, mend) }))
		}
	}
	return ladders
}

// inTurn lists changes to the limits that a breach meets in turn: when the
// mildest is kept, a stricter one of another practice set may still be breached.
func (f *finder) inTurn(breach *verdict.Verdict, to func(*verdict.Verdict) []Cure) []Cure {
	var ladder []Cure
	const most = 4 // limits in turn
	for left := breach; left != nil && len(ladder) < most; {
		next := to(left)
		if len(next) == 0 || len(ladder) > 0 && fmt.Sprint(next[0].Changes) == fmt.Sprint(ladder[0].Changes) {
			break
		}
		ladder = append(ladder, next...)
		then := f.with(&next[0])
		if then == nil {
			break
		}
		left = breached(then, breach)
	}
	return ladder
}

// conductorsOf are those that a breach is about: the one itself, or those on
// the way to a load and back.
func (f *finder) conductorsOf(breach *verdict.Verdict) []string {
	section, id, _ := strings.Cut(breach.Subject, ".")
	id, _, _ = strings.Cut(id, ".")
	switch section {
	case "conductors":
		return []string{id}
	case "components":
		if load := f.now.Analysis.Loads[id]; load != nil {
			return slices.Concat(load.Out, load.Back)
		}
		var guarded []string
		for _, c := range f.now.Record.Conductors {
			if r := f.now.Analysis.Conductors[c.ID]; r != nil && slices.Contains(r.GuardBy, id) {
				guarded = append(guarded, c.ID)
			}
		}
		return guarded
	}
	return nil
}

// sizes are larger conductors: each alone, and all to one size at least.
func (f *finder) sizes(breach *verdict.Verdict) [][]Cure {
	ids := f.conductorsOf(breach)
	groups := [][]string{ids}
	if len(ids) == 1 {
		groups = append(groups, f.circuitOf(ids[0]))
	}
	for _, id := range ids {
		if len(ids) > 1 {
			groups = append(groups, []string{id})
		}
	}
	var ladders [][]Cure
	for _, group := range groups {
		var ladder []Cure
		for _, size := range copper.UsualSizes(f.systemOf(group)) {
			if c, ok := f.raise(group, size); ok {
				ladder = append(ladder, c)
			}
		}
		ladders = append(ladders, ladder)
	}
	return ladders
}

// circuitOf are the conductors on the way to the loads that one conductor
// serves alone, and back.
func (f *finder) circuitOf(id string) []string {
	for _, load := range f.now.Record.Components {
		if r := f.now.Analysis.Loads[load.ID]; r != nil && (slices.Contains(r.Out, id) || slices.Contains(r.Back, id)) {
			return slices.Concat(r.Out, r.Back)
		}
	}
	return nil
}

func (f *finder) systemOf(ids []string) quantity.WireSystem {
	for _, id := range ids {
		if size, ok := f.now.Record.Conductor(id).Size.Get(); ok {
			return size.System
		}
	}
	return ""
}

// raise brings conductors to a size, those that are smaller. What was measured
// on the old ones has to be taken anew.
func (f *finder) raise(ids []string, size quantity.WireSize) (Cure, bool) {
	var c Cure
	for _, id := range ids {
		conductor := f.now.Record.Conductor(id)
		old, known := conductor.Size.Get()
		if !known || !larger(size, old) {
			continue
		}
		c.Changes = append(c.Changes, record.Change{Path: "conductors." + id + ".size", Value: size.String()})
		c.Again = append(c.Again, belonging(conductor)...)
	}
	if len(c.Changes) > 0 {
		c.Again = append(c.Again, f.readings(ids)...)
	}
	return c, len(c.Changes) > 0
}

// belonging lists the given entries of a conductor that belong to its size.
func belonging(c *record.Conductor) []string {
	var paths []string
	add := func(given bool, path string) {
		if given {
			paths = append(paths, c.Path+"."+path)
		}
	}
	add(c.Diameter.Is(), "diameter")
	add(c.Strands.Is(), "strands")
	add(c.BendRadius.Is(), "bend_radius")
	for _, end := range []struct {
		side string
		at   *record.End
	}{{"from", c.Ends.From}, {"to", c.Ends.To}} {
		if end.at == nil {
			continue
		}
		add(end.at.Barrel.Is(), "ends."+end.side+".barrel")
		add(end.at.Crimp.Pull.Is(), "ends."+end.side+".crimp.pull")
		add(end.at.Crimp.PullTime.Is(), "ends."+end.side+".crimp.pull_time")
	}
	return paths
}

// larger reports whether a size is larger than another of its system.
func larger(a, b quantity.WireSize) bool {
	if a.System != b.System {
		return false
	}
	if a.System == quantity.MM2 {
		return a.MM2 > b.MM2
	}
	return a.Gauge < b.Gauge
}

// ratings are other ratings of the devices that a breach is about: the nearest
// below first, and the nearest above.
func (f *finder) ratings(breach *verdict.Verdict) [][]Cure {
	var ladders [][]Cure
	for _, id := range f.devicesOf(breach) {
		c := f.now.Record.Component(id)
		rating, known := c.Rating.Get()
		if !known {
			continue
		}
		var below, above []Cure
		for _, amps := range curve.UsualRatings() {
			change := []record.Change{{Path: c.Path + ".rating", Value: fmt.Sprintf("%g A", amps)}}
			switch now := rating.In("A"); {
			case amps < now:
				below = append(below, Cure{Changes: change})
			case amps > now:
				above = append(above, Cure{Changes: change})
			}
		}
		slices.Reverse(below)
		ladders = append(ladders, below, above)
	}
	return ladders
}

func (f *finder) devicesOf(breach *verdict.Verdict) []string {
	section, id, _ := strings.Cut(breach.Subject, ".")
	id, _, _ = strings.Cut(id, ".")
	switch section {
	case "components":
		if f.now.Analysis.Devices[id] != nil {
			return []string{id}
		}
		if load := f.now.Analysis.Loads[id]; load != nil {
			return load.Devices
		}
	case "conductors":
		if r := f.now.Analysis.Conductors[id]; r != nil {
			return r.GuardBy
		}
	}
	return nil
}

// readings lists what was measured of a drop over conductors: a test of a load
// tells of the conductors that it had.
func (f *finder) readings(ids []string) []string {
	var paths []string
	for _, t := range f.now.Record.Tests {
		load := f.now.Analysis.Loads[t.Load.V]
		if load == nil || !slices.ContainsFunc(ids, func(id string) bool { return slices.Contains(load.Out, id) || slices.Contains(load.Back, id) }) {
			continue
		}
		for _, reading := range []struct {
			key   string
			given bool
		}{{"at_source", t.AtSource.Is()}, {"at_load", t.AtLoad.Is()}} {
			if reading.given {
				paths = append(paths, fmt.Sprintf("%s.%s", t.Path, reading.key))
			}
		}
	}
	return paths
}
