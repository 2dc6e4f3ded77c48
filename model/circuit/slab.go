package circuit

// slab hands out values that live as long as the analysis of a record, many from
// one piece of memory.
type slab[T any] struct {
	free []T
	next int // size of the next piece
}

// one returns a zero value.
func (s *slab[T]) one() *T { return &s.list(1)[:1][0] }

// list returns an empty list with room for a number of values.
func (s *slab[T]) list(room int) []T {
	if len(s.free) < room {
		s.next = min(max(8, 2*s.next), 64)
		s.free = make([]T, max(room, s.next))
	}
	out := s.free[:0:room]
	s.free = s.free[room:]
	return out
}
