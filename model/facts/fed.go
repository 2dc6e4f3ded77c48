package facts

import (
	"slices"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/quantity"
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

func fed(s *Subject, f *Device, r *record.Record, a *circuit.Analysis, id string) {
	f.Loads = []string{}
	var loads []*record.Component
	if result := a.Devices[id]; result != nil {
		f.Loads = append(f.Loads, result.Loads...)
	}
	for _, load := range f.Loads {
		loads = append(loads, r.Component(load))
	}
	lost := wayless(r, a)
	if len(loads) == 0 {
		lost = append(lost, figure.Because("no load is fed through it in the record"))
	}
	var lamps, steer []figure.Truth
	for _, load := range loads {
		lamps = append(lamps, settled(load.Kind.V == "lamp"))
		steer = append(steer, among(load.Purpose, load.Path+".purpose", "steering"))
	}
	one := settled(len(loads) == 1 && slices.Contains(motors[:], loads[0].Kind.V) && last(a.Loads[loads[0].ID].Devices) == id)
	if len(lost) > 0 {
		doubt := figure.OpenTruth(lost...)
		lamps, steer, one = append(lamps, doubt), append(steer, doubt), allOf(one, doubt)
	}
	putTruth(s, "lighting", &f.Lighting, anyOf(settled(f.Purpose == "lighting"), allOf(lamps...)))
	putTruth(s, "steering", &f.Steering, allOf(steer...))
	putTruth(s, "motor", &f.Motor, one)
	motor(s, f, a, loads)
}

// wayless tells of a load that has no way from a source, if there is one: it
// could hang on any device.
func wayless(r *record.Record, a *circuit.Analysis) []figure.Gap {
	for _, c := range r.Components {
		if load := a.Loads[c.ID]; load != nil && len(load.Out) == 0 {
			return []figure.Gap{figure.Because("the way from a source to " + c.ID + " is not known")}
		}
	}
	return nil
}

// settled is a truth that nothing leaves open.
func settled(v bool) figure.Truth { return figure.Truth{Value: v, Known: true} }

// last returns the last of names, "" of none.
func last(names []string) string {
	if len(names) == 0 {
		return ""
	}
	return names[len(names)-1]
}

// motor sets the rated current of the motor that a device feeds alone.
func motor(s *Subject, f *Device, a *circuit.Analysis, loads []*record.Component) {
	if f.Motor == nil || !*f.Motor {
		s.open("motor_a", figure.Because("it is not known to feed one motor alone"))
	} else if rated, ok := loads[0].Current.Get(); ok {
		f.MotorA = &rated.Base
	} else {
		putFigure(s, "motor_a", &f.MotorA, a.Loads[loads[0].ID].Current)
	}
	derive(s, "motor_pct", &f.MotorPct, []string{"rating_a", "motor_a"}, func() float64 {
		return quantity.Round(100 * *f.RatingA / *f.MotorA)
	})
}
