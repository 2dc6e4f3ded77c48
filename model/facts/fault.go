package facts

import (
	"slices"

	"driploop/model/circuit"
)

// Fault is what a bolted fault makes of a conductor, and heat in use.
type Fault struct {
	// BehindDevice: a fuse or breaker lies between every source and it.
	BehindDevice *bool `json:"behind_device,omitempty"`
	// GuardFused: the devices behind guard_a are fuses. The gates of fuses bound
	// how they open on a short circuit; the calibration of breakers does not.
	GuardFused  *bool    `json:"guard_fused,omitempty"`
	FaultLeastA *float64 `json:"fault_least_a,omitempty"` // at its far end
	FaultA      *float64 `json:"fault_a,omitempty"`
	// Clears: a device ahead of it surely opens at the least of that current,
	// within ClearS; it cannot open sooner than ClearLeastS at the greatest. ClearByS
	// is ClearS at most, where one of the devices is not known well enough to tell.
	Clears      *bool    `json:"clears,omitempty"`
	ClearS      *float64 `json:"clear_s,omitempty"`
	ClearByS    *float64 `json:"clear_by_s,omitempty"`
	ClearLeastS *float64 `json:"clear_least_s,omitempty"`
	// LetThroughA2s is the greatest energy let through at a fault along it,
	// LetThroughUpToA2s what that is at most, as ClearByS is, WithstandA2s what its
	// insulation stands.
	LetThroughA2s     *float64 `json:"let_through_a2s,omitempty"`
	LetThroughUpToA2s *float64 `json:"let_through_up_to_a2s,omitempty"`
	WithstandA2s      *float64 `json:"withstand_a2s,omitempty"`
	// TemperatureC is the highest in normal use, StallC the highest when a stalled
	// motor is cut off.
	TemperatureC *float64 `json:"temperature_degc,omitempty"`
	StallC       *float64 `json:"stall_degc,omitempty"`
}

func (b *Builder) fault(s *Subject, f *Fault, result *circuit.ConductorResult) {
	switch {
	case b.shorted != "":
		s.because(b.shorted, "behind_device")
	case len(result.Feeds) == 0:
		s.because("no source reaches it in the record", "behind_device")
	default:
		f.BehindDevice = s.flag(!ahead(result.Feeds))
	}
	if result.Guard.Known {
		fused := !slices.ContainsFunc(result.GuardBy, func(id string) bool { return b.record.Component(id).Kind.V != "fuse" })
		f.GuardFused = s.flag(fused && len(result.GuardBy) > 0)
	} else {
		s.unsolved("guard_fused", result.Guard.Gaps)
	}
	putFigure(s, "fault_least_a", &f.FaultLeastA, &result.FaultLowA)
	putFigure(s, "fault_a", &f.FaultA, &result.FaultHighA)
	putSolved(s, "clears", &f.Clears, &result.Clears)
	putFigure(s, "clear_s", &f.ClearS, &result.ClearS)
	putFigure(s, "clear_by_s", &f.ClearByS, &result.ClearByS)
	putFigure(s, "clear_least_s", &f.ClearLeastS, &result.ClearLeastS)
	putFigure(s, "let_through_a2s", &f.LetThroughA2s, &result.LetThroughA2s)
	putFigure(s, "let_through_up_to_a2s", &f.LetThroughUpToA2s, &result.LetThroughUpToA2s)
	putFigure(s, "withstand_a2s", &f.WithstandA2s, &result.WithstandA2s)
	putFigure(s, "temperature_degc", &f.TemperatureC, &result.TemperatureC)
	putFigure(s, "stall_degc", &f.StallC, &result.StallC)
}

// ahead tells whether no device lies between one of the sources and what they
// feed.
func ahead(feeds []circuit.Feed) bool {
	for i := range feeds {
		if feeds[i].Ahead {
			return true
		}
	}
	return false
}

// stalled leaves the heat of a stall open where a motor is fed through the
// conductor whose current with a locked rotor is not recorded.
func stalled(f *Conductor, loads []*served) {
	for _, load := range loads {
		if slices.Contains(motors[:], load.Kind.V) && !load.Stall.Is() {
			f.StallC = nil
			f.lacks("stall_degc", load.Path, "stall")
		}
	}
}
