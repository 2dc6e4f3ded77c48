package circuit

import "math"

// sets is a union-find over nodes that keeps the voltage of each node against
// the root of its set.
type sets struct {
	parent []int
	volts  []float64 // above the parent
}

func newSets(n int) *sets {
	s := &sets{parent: make([]int, n), volts: make([]float64, n)}
	for i := range s.parent {
		s.parent[i] = i
	}
	return s
}

// find returns the root of a node and the volts of the node above it.
func (s *sets) find(i int) (root int, volts float64) {
	root = i
	for s.parent[root] != root {
		volts += s.volts[root]
		root = s.parent[root]
	}
	for at := volts; i != root && s.parent[i] != root; {
		next, step := s.parent[i], s.volts[i]
		s.parent[i], s.volts[i] = root, at
		i, at = next, at-step
	}
	return root, volts
}

// join makes a stand volts above b. If they are joined already, it returns by
// how much their difference misses that.
func (s *sets) join(a, b int, volts float64) (miss float64) {
	ra, va := s.find(a)
	rb, vb := s.find(b)
	switch {
	case ra == rb:
		return math.Abs(va - vb - volts)
	case ra < rb: // the lower root stays, whatever the order of joins
		s.parent[rb], s.volts[rb] = ra, va-vb-volts
	default:
		s.parent[ra], s.volts[ra] = rb, vb-va+volts
	}
	return 0
}
