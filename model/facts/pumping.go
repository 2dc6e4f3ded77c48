package facts

import (
	"slices"

	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
)

// Pumping is what the bilge pumps ask of their supply when all of them run.
type Pumping struct {
	// BilgePumps counts them; open while a pump does not tell what it is for.
	// BilgePumpsMost counts such pumps too.
	BilgePumps     *int `json:"bilge_pumps,omitempty"`
	BilgePumpsMost int  `json:"bilge_pumps_most"`
	// PumpsSharePct is their current together as a share of what a conductor may
	// carry or a device is rated for, the greatest on their ways; PumpsAt names
	// where that is.
	PumpsSharePct *float64 `json:"pumps_share_pct,omitempty"`
	PumpsAt       *string  `json:"pumps_at,omitempty"`
}

func (b *Builder) pumping(f *Vessel) {
	s := &f.Subject
	told := true
	var pumps []*record.Component
	for _, c := range b.record.Components {
		switch {
		case c.Purpose.V == "bilge-pump":
			pumps = append(pumps, c)
			f.BilgePumpsMost++
		case c.Kind.V == "pump" && !c.Purpose.Is():
			f.BilgePumpsMost++
			told = false
			s.lacks("bilge_pumps", c.Path, "purpose")
		}
	}
	if told {
		f.BilgePumps = s.count(len(pumps))
	}
	worst, at, gaps := b.pumpedShare(pumps)
	switch {
	case len(gaps) > 0:
	case at == "":
		gaps = []figure.Gap{figure.Because("no bilge pump is wired in the record")}
	default:
		f.PumpsSharePct, f.PumpsAt = s.number(worst), s.word(at)
		return
	}
	s.open("pumps_share_pct", gaps...)
	s.open("pumps_at", gaps...)
}

// pumpedShare returns the greatest share that the pumps together take of a
// conductor or device on their ways, in percent, and where.
func (b *Builder) pumpedShare(pumps []*record.Component) (worst float64, at string, gaps []figure.Gap) {
	if len(pumps) == 0 {
		return 0, "", nil
	}
	conductors, devices := map[string]float64{}, map[string]float64{}
	for _, pump := range pumps {
		load := b.solved.Loads[pump.ID]
		if load == nil || !load.Current.Known {
			if load != nil {
				gaps = append(gaps, orUnsolved(load.Current.Gaps)...)
			}
			continue
		}
		for _, id := range slices.Concat(load.Out, load.Back) {
			conductors[id] += load.Current.Value
		}
		for _, id := range load.Devices {
			devices[id] += load.Current.Value
		}
	}
	take := func(amps, allowed float64, what string) {
		if share := quantity.Round(100 * amps / allowed); share > worst {
			worst, at = share, what
		}
	}
	for i := range b.wires {
		c, result := b.wires[i].Conductor, b.wires[i].result
		amps := conductors[c.ID]
		switch {
		case amps == 0:
		case !result.Allowable.Known:
			gaps = append(gaps, orUnsolved(result.Allowable.Gaps)...)
		case result.Current.Known: // where ways divide, no more than in the solved network
			take(min(amps, result.Current.Value), result.Allowable.Value, "conductor "+c.ID)
		default:
			take(amps, result.Allowable.Value, "conductor "+c.ID)
		}
	}
	for _, c := range b.record.Components {
		amps := devices[c.ID]
		rating, ok := c.Rating.Get()
		switch {
		case amps == 0:
		case !ok:
			gaps = append(gaps, figure.Missing(c.Path+".rating"))
		default:
			take(amps, rating.Base, c.Kind.V+" "+c.ID)
		}
	}
	return worst, at, gaps
}
