package circuit

// walk says what a search passes through. Loads, coils and the insides of
// sources are never passed.
type walk struct {
	devices  bool // fuses and breakers
	switches bool // what opens by hand
	without  int  // branch that is left out, -1 for none
	barrier  int  // node that is reached but not passed, -1 for none
}

var (
	everywhere   = walk{devices: true, switches: true, without: -1, barrier: -1}
	aheadOfAny   = walk{devices: false, switches: true, without: -1, barrier: -1}
	pastNoSwitch = walk{devices: true, switches: false, without: -1, barrier: -1}
)

// searcher finds what can be joined to a node with every switch closed and
// every command possible. Two links of one component that need different
// commands never follow each other on a way, so that a reversing controller
// does not join supply and return.
//
// A place of the search is a node, or a node reached over such a link.
type searcher struct {
	net    *network
	mark   []int // by place: the last search that reached it
	round  int
	choice []int // branches with a choice of commands
	first  []int // by branch: place of its far node b, then of a; -1 without choice
	queue  []int
	from   []step // by place: how it was reached
}

// step is one step of a search: over a branch, from a place.
type step struct{ branch, place int }

func newSearcher(n *network) *searcher {
	s := &searcher{net: n, first: make([]int, len(n.branches))}
	places := len(n.nodes)
	for i := range n.branches {
		s.first[i] = -1
		if n.branches[i].choice {
			s.first[i] = places
			s.choice = append(s.choice, i)
			places += 2
		}
	}
	s.mark, s.from = make([]int, places), make([]step, places)
	return s
}

// node returns the node of a place, and the link it was reached over or -1.
func (s *searcher) node(place int) (node, over int) {
	if place < len(s.net.nodes) {
		return place, -1
	}
	k := place - len(s.net.nodes)
	b := &s.net.branches[s.choice[k/2]]
	if k%2 == 0 {
		return b.b, s.choice[k/2]
	}
	return b.a, s.choice[k/2]
}

// across returns the place reached over a branch from a node.
func (s *searcher) across(branch, node int) int {
	b := &s.net.branches[branch]
	if first := s.first[branch]; first >= 0 {
		if node == b.a {
			return first
		}
		return first + 1
	}
	return b.other(node)
}

// passable tells whether a way that came over one branch can go on over another.
func (s *searcher) passable(w *walk, came, next int) bool {
	b := &s.net.branches[next]
	if next == w.without {
		return false
	}
	switch b.kind {
	case wire:
	case device:
		if !w.devices || !w.switches && isolates(b) {
			return false
		}
	case contact:
		if !w.switches && b.class == switchClass {
			return false
		}
	default:
		return false
	}
	if came < 0 || !b.choice {
		return true
	}
	c := &s.net.branches[came]
	return c.id != b.id || c.when == "" || b.when == "" || c.when == b.when
}

// isolates tells whether a device also serves as the battery's disconnect.
func isolates(b *branch) bool { return b.comp.Duty.V == "battery-disconnect" }

// from starts at a node and calls visit for every place reached, nearest first.
func (s *searcher) run(start int, w walk, visit func(place, node int)) {
	s.round++
	s.queue = append(s.queue[:0], start)
	s.mark[start] = s.round
	s.from[start] = step{-1, -1}
	for len(s.queue) > 0 {
		place := s.queue[0]
		s.queue = s.queue[1:]
		node, over := s.node(place)
		visit(place, node)
		if node == w.barrier {
			continue
		}
		for _, i := range s.net.at[node] {
			if !s.passable(&w, over, i) {
				continue
			}
			if next := s.across(i, node); s.mark[next] != s.round {
				s.mark[next] = s.round
				s.from[next] = step{i, place}
				s.queue = append(s.queue, next)
			}
		}
	}
}

// nodes returns which nodes a search reaches.
func (s *searcher) nodes(start int, w walk) []bool {
	reached := make([]bool, len(s.net.nodes))
	s.run(start, w, func(_, node int) { reached[node] = true })
	return reached
}
