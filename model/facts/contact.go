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
func (d *Document) contacts(r *record.Record, a *circuit.Analysis, c *record.Component) {
	result := a.Components[c.ID]
	if result == nil {
		return
	}
	keys := contactKeys(c.ID, result.Contacts)
	for i, contact := range result.Contacts {
		f := &Contact{
			Subject: Subject{Path: contact.Path, Key: keys[i]}, Component: c.ID, Kind: c.Kind.V, Purpose: c.Duty.Or("normal"),
			Disconnects: disconnects(a, c.ID),
		}
		s := &f.Subject
		contactRating(s, f, c, contact.Link)
		putMeasureOf(s, "intermittent_a", &f.IntermittentA, &c.Intermittent, c.Path, "intermittent")
		putFigure(s, "nominal_v", &f.NominalV, result.NominalV)
		putFigure(s, "current_a", &f.CurrentA, contact.Through)
		putFigure(s, "surge_a", &f.SurgeA, contact.Surge)
		switched(s, f, r, a, contact.Loads)
		d.Contacts[strings.TrimPrefix(contact.Path, "components.")] = f
	}
}

// contactRating sets what a contact carries without pause.
func contactRating(s *Subject, f *Contact, c *record.Component, link *record.Link) {
	whole, field := c.Continuous, c.Path+".continuous"
	if c.Kind.V == "connector" {
		whole, field = c.Rating, c.Path+".rating"
	}
	ratings := []record.Measure{whole}
	fields := []string{field}
	if link != nil {
		ratings, fields = append(ratings, link.Rating), append(fields, link.Path+".rating")
	}
	for i, rating := range ratings {
		given, ok := rating.Get()
		switch {
		case !ok:
			s.open("rating_a", figure.Missing(fields[i]))
		case f.RatingA == nil || given.Base < *f.RatingA:
			f.RatingA = ptr(given.Base)
		}
	}
	if s.Open.Has("rating_a") {
		f.RatingA = nil
	}
}

// switched sums what a contact switches by kind of load. A contact through which
// no load draws carries coils alone.
func switched(s *Subject, f *Contact, r *record.Record, a *circuit.Analysis, loads []string) {
	var sums struct{ lamps, motors, plain float64 }
	var gaps []figure.Gap
	for _, id := range loads {
		load, result := r.Component(id), a.Loads[id]
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
	facts := []string{"lamps_a", "motors_a", "coils_a", "plain_a"}
	if len(loads) == 0 && f.CurrentA == nil {
		gaps = append(gaps, s.Open.Of("current_a")...)
	}
	if len(gaps) > 0 {
		for _, fact := range facts {
			s.open(fact, gaps...)
		}
		return
	}
	coils := 0.0
	if len(loads) == 0 {
		coils = *f.CurrentA
	}
	f.LampsA, f.MotorsA = ptr(quantity.Round(sums.lamps)), ptr(quantity.Round(sums.motors))
	f.CoilsA, f.PlainA = ptr(coils), ptr(quantity.Round(sums.plain))
}
