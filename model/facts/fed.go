package facts

import (
	"slices"

	"driploop/model/figure"
	"driploop/model/record"
)

// Fed is what a device feeds.
type Fed struct {
	Loads []string `json:"loads"` // the loads whose current passes it
	// Lighting: all that it feeds are lamps, or the record calls it a device for
	// lighting.
	Lighting *bool `json:"lighting,omitempty"`
	// Steering: all that it feeds steers the boat.
	Steering *bool `json:"steering,omitempty"`
	// Motor: all that it feeds is one motor, and it is the last device before that
	// motor; MotorA is that motor's rated current,
	// MotorPct the device's rating against it.
	Motor    *bool    `json:"motor,omitempty"`
	MotorA   *float64 `json:"motor_a,omitempty"`
	MotorPct *float64 `json:"motor_pct,omitempty"`
	// Parallel names the other devices that lie in parallel with it.
	Parallel string `json:"parallel"`
}

// motors are the kinds of load that are driven by one motor.
var motors = [...]string{"motor", "pump", "blower", "refrigerator"}

func (b *Builder) fed(s *Subject, f *Device, id string) {
	if result := b.solved.Devices[id]; result != nil {
		f.Loads = result.Loads
	}
	f.Loads = listed(f.Loads)
	loads := make([]*record.Component, 0, len(f.Loads))
	for _, load := range f.Loads {
		loads = append(loads, b.record.Component(load))
	}
	lost := b.wayless()
	// What the record calls the device of a charging source feeds no load of its own.
	charges := len(loads) == 0 && f.Purpose == "charging"
	if len(loads) == 0 && !charges {
		lost = append(lost, figure.Because("no load is fed through it in the record"))
	}
	lamps, steer := make([]truth, 0, len(loads)+1), make([]truth, 0, len(loads)+1)
	for _, load := range loads {
		lamps = append(lamps, settled(load.Kind.V == "lamp"))
		steer = append(steer, s.among(&load.Purpose, place{load.Path, "purpose"}, "steering"))
	}
	if charges {
		lamps, steer = append(lamps, settled(false)), append(steer, settled(false))
	}
	one := settled(len(loads) == 1 && slices.Contains(motors[:], loads[0].Kind.V) && last(b.solved.Loads[loads[0].ID].Devices) == id)
	if len(lost) > 0 {
		doubt := s.doubt(lost...)
		lamps, steer, one = append(lamps, doubt), append(steer, doubt), s.allOf(one, doubt)
	}
	putTruth(s, "lighting", &f.Lighting, s.anyOf(settled(f.Purpose == "lighting"), s.allOf(lamps...)))
	putTruth(s, "steering", &f.Steering, s.allOf(steer...))
	putTruth(s, "motor", &f.Motor, one)
	b.motor(s, f, loads)
}

// listed keeps a list without names from being null in JSON.
func listed(names []string) []string {
	if names == nil {
		return []string{}
	}
	return names
}

// wayless tells of a load that has no way from a source, if there is one: it
// could hang on any device.
func (v *survey) wayless() []figure.Gap {
	if v.lost == "" {
		return nil
	}
	return []figure.Gap{figure.Because(v.lost)}
}

// last returns the last of names, "" of none.
func last(names []string) string {
	if len(names) == 0 {
		return ""
	}
	return names[len(names)-1]
}

// motor sets the rated current of the motor that a device feeds alone.
func (b *Builder) motor(s *Subject, f *Device, loads []*record.Component) {
	if f.Motor == nil || !*f.Motor {
		s.because("it is not known to feed one motor alone", "motor_a")
	} else if loads[0].Current.Is() {
		f.MotorA = &loads[0].Current.V.Base
	} else {
		putFigure(s, "motor_a", &f.MotorA, &b.solved.Loads[loads[0].ID].Current)
	}
	percent(s, "motor_pct", &f.MotorPct, operand{"rating_a", f.RatingA}, operand{"motor_a", f.MotorA})
}
