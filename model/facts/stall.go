package facts

import (
	"driploop/model/circuit"
	"driploop/model/figure"
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

func stall(s *Subject, f *Stall, a *circuit.Analysis, c *record.Component, result *circuit.LoadResult) {
	for _, kind := range motors {
		f.Rotor = f.Rotor || kind == c.Kind.V
	}
	gap, unknown := short(a)
	if !f.Rotor {
		gap, unknown = figure.Because("it has no rotor to lock"), true
	}
	if unknown {
		for _, fact := range []string{"stall_cut", "stall_cut_s", "motor_limit_s", "stall_heats", "stall_heat_s"} {
			s.open(fact, gap)
		}
		return
	}
	putMeasure(s, "motor_limit_s", &f.MotorLimitS, &c.MotorLimit, "motor_limit")
	putTruth(s, "stall_heats", &f.StallHeats, result.StallHeats)
	putFigure(s, "stall_heat_s", &f.StallHeatS, result.StallHeatS)
	f.StallAt = result.StallAt

	protector := negated(among(c.Protector, s.field("protector"), "none"))
	putTruth(s, "stall_cut", &f.StallCut, anyOf(result.StallOpens, protector))
	switch {
	case !protector.Known:
		s.open("stall_cut_s", protector.Gaps...)
	case !protector.Value:
		putFigure(s, "stall_cut_s", &f.StallCutS, result.StallOpenS)
	case f.MotorLimitS == nil:
		s.open("stall_cut_s", s.Open.Of("motor_limit_s")...)
	case result.StallOpenS.Known:
		f.StallCutS = ptr(min(result.StallOpenS.Value, *f.MotorLimitS))
	default:
		f.StallCutS = f.MotorLimitS
	}
}
