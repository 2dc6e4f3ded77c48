package remedy

import (
	"math"

	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/verdict"
)

// nearer brings a device to where a breach says: the conductor that leads to it
// gets shorter by what is too much, the one behind it longer.
func (f *finder) nearer(breach *verdict.Verdict) []Cure {
	ids := f.conductorsOf(breach)
	if len(ids) != 1 {
		return nil
	}
	ahead := f.now.Record.Conductor(ids[0])
	result := f.now.Analysis.Conductors[ids[0]]
	if ahead == nil || result == nil {
		return nil
	}
	var ladder []Cure
	for _, feed := range result.Feeds {
		behind := f.behind(feed.EndsAtDevice, ids[0])
		length, known := ahead.Length.Get()
		if behind == nil || !known {
			continue
		}
		for _, over := range tooLong(breach) {
			rest, knownToo := behind.Length.Get()
			if !knownToo || length.In("mm") <= over {
				continue
			}
			c := Cure{Work: true}
			over = math.Ceil(over)
			c.Changes = append(f.lengthened(ahead, length.In("mm"), -over, len(ahead.Route)-1), f.lengthened(behind, rest.In("mm"), over, 0)...)
			ladder = append(ladder, c)
		}
	}
	return ladder
}

// tooLong are the lengths of a breach that are over their limits, by how much, in
// mm.
func tooLong(breach *verdict.Verdict) (over []float64) {
	for _, limit := range breach.Limit {
		for _, f := range breach.Figures {
			if f.Name != limit.Name || limit.Text != "" || limit.Quantity.Dim != quantity.Length {
				continue
			}
			if by := f.Quantity.In("mm") - limit.Quantity.In("mm"); by > 0 {
				over = append(over, by)
			}
		}
	}
	return over
}

// behind is the one conductor that leads on from a device; nil if there is none,
// or more.
func (f *finder) behind(device, ahead string) *record.Conductor {
	var found *record.Conductor
	for _, c := range f.now.Record.Conductors {
		if device == "" || c.ID == ahead || c.From.Component != device && c.To.Component != device {
			continue
		}
		if found != nil {
			return nil
		}
		found = c
	}
	return found
}

// lengthened changes the length of a conductor, and that of the segment at the
// device with it.
func (f *finder) lengthened(c *record.Conductor, mm, by float64, segment int) []record.Change {
	changes := []record.Change{{Path: c.Path + ".length", Value: inWhole(mm + by)}}
	if segment < 0 || segment >= len(c.Route) {
		return changes
	}
	if s := c.Route[segment]; s.Length.Is() && s.Length.V.In("mm")+by > 0 {
		changes = append(changes, record.Change{Path: s.Path + ".length", Value: inWhole(s.Length.V.In("mm") + by)})
	}
	return changes
}

// inWhole writes a length in whole millimetres.
func inWhole(mm float64) string { return quantity.New(math.Floor(mm), "mm").String() }
