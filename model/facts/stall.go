package facts

import (
	"slices"

	"driploop/model/circuit"
	"driploop/model/record"
)

// Stall is what a locked rotor makes of a motor and of the conductors to it.
type Stall struct {
	Rotor bool `json:"rotor"` // it has one that can lock
	// StallCut: a device on its way, or the motor's own protector, surely ends a
	// stall, within StallCutS. A protector is taken to open within the time that
	// the motor stands.
	StallCut  *bool    `json:"stall_cut,omitempty"`
	StallCutS *float64 `json:"stall_cut_s,omitempty"`
	// MotorLimitS is how long the motor stands a locked rotor.
	MotorLimitS *float64 `json:"motor_limit_s,omitempty"`
	// StallHeats: a conductor on its way, StallAt, passes the rating of its
	// insulation in a stall that lasts; StallHeatS is how soon.
	StallHeats *bool    `json:"stall_heats,omitempty"`
	StallHeatS *float64 `json:"stall_heat_s,omitempty"`
	StallAt    string   `json:"stall_at"`
}

func (b *Builder) stall(s *Subject, f *Stall, c *record.Component, result *circuit.LoadResult) {
	f.Rotor = slices.Contains(motors[:], c.Kind.V)
	why := b.shorted
	if !f.Rotor {
		why = "it has no rotor to lock"
	}
	if why != "" {
		s.because(why, "stall_cut", "stall_cut_s", "motor_limit_s", "stall_heats", "stall_heat_s")
		return
	}
	putMeasure(s, "motor_limit_s", &f.MotorLimitS, &c.MotorLimit, "motor_limit")
	putSolved(s, "stall_heats", &f.StallHeats, &result.StallHeats)
	putFigure(s, "stall_heat_s", &f.StallHeatS, &result.StallHeatS)
	f.StallAt = result.StallAt

	protector := negated(s.among(&c.Protector, s.own("protector"), "none"))
	putTruth(s, "stall_cut", &f.StallCut, s.anyOf(s.solved(&result.StallOpens), protector))
	switch {
	case !protector.known:
		s.missing("stall_cut_s", "protector")
	case !protector.value:
		putFigure(s, "stall_cut_s", &f.StallCutS, &result.StallOpenS)
	case f.MotorLimitS == nil:
		s.follow("stall_cut_s", "motor_limit_s")
	case result.StallOpenS.Known:
		f.StallCutS = s.number(min(result.StallOpenS.Value, *f.MotorLimitS))
	default:
		f.StallCutS = f.MotorLimitS
	}
}
