package record

// memo remembers what was read of a single value that merge keys bring to many
// mappings: the same value, at the same place.
type memo struct {
	of   *spec
	read any // pointer to the value
}

// keep remembers what was read of a value. One in which something was wrong is read
// again.
func (m *memo) keep(s *spec, target any) {
	if m != nil {
		m.of, m.read = s, target
	}
}

// again gives a target what was read before, if anything was.
func (m *memo) again(d *decoder, s *spec, target any) bool {
	if m == nil || m.of != s {
		return false
	}
	switch v := target.(type) {
	case *Text:
		if copied(v, m.read) {
			if v.State == Given {
				d.refer(s.refs, v.V, v.at)
			}
			return true
		}
	case *Flag:
		return copied(v, m.read)
	case *Count:
		return copied(v, m.read)
	case *Measure:
		return copied(v, m.read)
	case *Wire:
		return copied(v, m.read)
	case *Date:
		return copied(v, m.read)
	}
	return false
}

func copied[T any](to *Value[T], read any) bool {
	from, ok := read.(*Value[T])
	if !ok || from.State == Absent {
		return false
	}
	*to = *from
	return true
}
