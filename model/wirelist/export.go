package wirelist

import (
	"driploop/model/record"
)

// Export lists the conductors of a record: the header and one row each. Import
// makes conductors that say the same of it.
func Export(r *record.Record) [][]string {
	rows := [][]string{Names()}
	for _, c := range r.Conductors {
		rows = append(rows, []string{
			c.ID, c.Role.V,
			c.From.Component, c.From.Name, kind(r, c.From.Component),
			c.To.Component, c.To.Name, kind(r, c.To.Component),
			sizeOf(c), c.Colour.V, measured(c.Insulation), measured(c.Length), c.Sheath.V, measured(c.Diameter), c.Class.V, c.Standard.V,
		})
	}
	return rows
}

func kind(r *record.Record, id string) string {
	if c := r.Component(id); c != nil {
		return c.Kind.V
	}
	return ""
}

func sizeOf(c *record.Conductor) string {
	if size, ok := c.Size.Get(); ok {
		return size.String()
	}
	return ""
}

func measured(m record.Measure) string {
	if v, ok := m.Get(); ok {
		return v.String()
	}
	return ""
}
