package facts

// slab hands out values of one type from pieces of memory that hold many, since
// a document has thousands of them. What it has handed out stays where it is.
type slab[T any] struct {
	piece []T // the newest one; those before live on by the pointers into them
	used  int
}

// pieceful is for how many values the first piece has room; each further one has
// room for twice as many as the one before.
const pieceful = 32

func (s *slab[T]) take() *T {
	if s.used == len(s.piece) {
		s.piece, s.used = make([]T, max(pieceful, 2*len(s.piece))), 0
	}
	s.used++
	return &s.piece[s.used-1]
}

// expect makes room for a known number of values.
func (s *slab[T]) expect(n int) {
	if len(s.piece)-s.used < n {
		s.piece, s.used = make([]T, n), 0
	}
}

// keep returns a place that holds a value.
func (s *slab[T]) keep(v T) *T {
	to := s.take()
	*to = v
	return to
}

// reset takes back all that was handed out of the newest piece.
func (s *slab[T]) reset() {
	clear(s.piece[:s.used])
	s.used = 0
}
