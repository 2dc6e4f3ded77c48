package facts

import (
	"strings"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
)

// Contact is the facts of one contact: a link of a switch, relay, controller or
// connector, or the one path through such a component without links.
type Contact struct {
	Subject
	Component string `json:"component"`
	Kind      string `json:"kind"`    // of the component
	Purpose   string `json:"purpose"` // the record's "duty"; "normal" unless said
	// Disconnects: the component is the switch that cuts off a battery.
	Disconnects bool `json:"disconnects"`
	// RatingA is what it carries without pause; of a link the lesser of its own
	// rating and its component's. IntermittentA is the component's.
	RatingA       *float64 `json:"rating_a,omitempty"`
	IntermittentA *float64 `json:"intermittent_a,omitempty"`
	NominalV      *float64 `json:"nominal_v,omitempty"` // of the circuit it stands in
	CurrentA      *float64 `json:"current_a,omitempty"` // greatest, starting and stall aside
	SurgeA        *float64 `json:"surge_a,omitempty"`   // greatest while starting or stalled
	// What it switches, by kind of load, each the sum of their running currents:
	// lamps with a cold filament (a lamp whose recorded starting current is no more
	// than its running current has none), motors, coils, and all else.
	LampsA  *float64 `json:"lamps_a,omitempty"`
	MotorsA *float64 `json:"motors_a,omitempty"`
	CoilsA  *float64 `json:"coils_a,omitempty"`
	PlainA  *float64 `json:"plain_a,omitempty"`
}

// contacts adds the contacts of a component.
func (b *Builder) contacts(c *record.Component, result *circuit.ComponentResult) {
	if len(result.Contacts) == 0 {
		return
	}
	keys := contactKeys(c.ID, result.Contacts)
	for i, contact := range result.Contacts {
		f := b.made.contacts.take()
		f.Subject, f.Component, f.Kind = b.subject(contact.Path), c.ID, c.Kind.V
		f.Purpose, f.Disconnects = c.Duty.Or("normal"), b.disconnects(c.ID)
		s := &f.Subject
		s.Key = keys[i]
		contactRating(s, f, c, contact.Link)
		putMeasureOf(s, "intermittent_a", &f.IntermittentA, &c.Intermittent, c.Path, "intermittent")
		putFigure(s, "nominal_v", &f.NominalV, &result.NominalV)
		putFigure(s, "current_a", &f.CurrentA, &contact.Through)
		putFigure(s, "surge_a", &f.SurgeA, &contact.Surge)
		b.switched(s, f, contact.Loads)
		b.doc.Contacts[strings.TrimPrefix(contact.Path, "components.")] = f
	}
}

// contactRating sets what a contact carries without pause.
func contactRating(s *Subject, f *Contact, c *record.Component, link *record.Link) {
	whole, entry := &c.Continuous, "continuous"
	if c.Kind.V == "connector" {
		whole, entry = &c.Rating, "rating"
	}
	putMeasureOf(s, "rating_a", &f.RatingA, whole, c.Path, entry)
	if link == nil {
		return
	}
	var own *float64
	putMeasureOf(s, "rating_a", &own, &link.Rating, link.Path, "rating")
	if own == nil || f.RatingA != nil && *own < *f.RatingA {
		f.RatingA = own
	}
}

// switched sums what a contact switches by kind of load. A contact through which
// no load draws carries coils alone.
func (b *Builder) switched(s *Subject, f *Contact, loads []string) {
	var sums struct{ lamps, motors, plain float64 }
	var gaps []figure.Gap
	for _, id := range loads {
		load, result := b.record.Component(id), b.solved.Loads[id]
		if load == nil || result == nil || !result.Current.Known {
			if result != nil {
				gaps = append(gaps, orUnsolved(result.Current.Gaps)...)
			}
			continue
		}
		switch current := result.Current.Value; load.Kind.V {
		case "lamp":
			if start, ok := load.Starting.Get(); ok && start.Base <= current {
				sums.plain += current
			} else {
				sums.lamps += current
			}
		case "motor", "pump", "blower", "refrigerator":
			sums.motors += current
		default:
			sums.plain += current
		}
	}
	if len(loads) == 0 && f.CurrentA == nil {
		gaps = append(gaps, s.Open.Of("current_a")...)
	}
	if len(gaps) > 0 {
		for _, fact := range [...]string{"lamps_a", "motors_a", "coils_a", "plain_a"} {
			s.open(fact, gaps...)
		}
		return
	}
	coils := 0.0
	if len(loads) == 0 {
		coils = *f.CurrentA
	}
	f.LampsA, f.MotorsA = s.number(quantity.Round(sums.lamps)), s.number(quantity.Round(sums.motors))
	f.CoilsA, f.PlainA = s.number(coils), s.number(quantity.Round(sums.plain))
}
