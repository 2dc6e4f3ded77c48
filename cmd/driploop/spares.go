package main

import "sync"

// spares are things that are used again: as many as were in use at a time. (A
// sync.Pool drops them with the garbage that they are to save.)
type spares[T any] struct {
	mutex sync.Mutex
	free  []*T
}

// take returns one that nobody uses.
func (s *spares[T]) take() *T {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	last := len(s.free) - 1
	if last < 0 {
		return new(T)
	}
	one := s.free[last]
	s.free = s.free[:last]
	return one
}

// give gives one back.
func (s *spares[T]) give(one *T) {
	s.mutex.Lock()
	defer s.mutex.Unlock()
	s.free = append(s.free, one)
}
