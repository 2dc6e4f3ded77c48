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
// every command possible. A way that has passed a link of a component by one
// command passes no other link of it by another command, so that a reversing
// controller does not join supply and return. (It remembers the last such
// component, which is enough unless two of them interlace.)
type searcher struct {
	net      *network
	memories []int // by branch: number of its component and command, 0 without a choice
	owner    []string
	mark     []int // by node: the last search that reached it with no memory
	marks    map[remembered]int
	count    []int // by node: memories met in this search
	counted  []int
	round    int
	places   []place
}

// remembered is a node reached with a memory of a command.
type remembered struct{ node, memory int }

// place is one place of a search: a node, how it was reached, and the command
// that the way there depends on.
type place struct {
	node, memory int
	over         int // branch, -1 at the start
	before       int // place, -1 at the start
}

// step is one step of a way: over a branch, from a node.
type step struct{ branch, node int }

// memoryLimit is how many commands a node is told apart by; a way beyond it
// counts as free of commands, so that more is reached rather than less.
const memoryLimit = 24

func newSearcher(n *network) *searcher {
	s := &searcher{
		net: n, memories: make([]int, len(n.branches)), owner: []string{""}, mark: make([]int, len(n.nodes)),
		count: make([]int, len(n.nodes)), counted: make([]int, len(n.nodes)),
	}
	var numbers map[[2]string]int
	for i := range n.branches {
		b := &n.branches[i]
		if !b.choice || b.when == "" || b.kind == coil {
			continue
		}
		if numbers == nil {
			numbers, s.marks = map[[2]string]int{}, map[remembered]int{}
		}
		key := [2]string{b.id, b.when}
		if numbers[key] == 0 {
			numbers[key] = len(s.owner)
			s.owner = append(s.owner, b.id)
		}
		s.memories[i] = numbers[key]
	}
	return s
}

// pass tells whether a way with a memory can go on over a branch, and what it
// remembers then.
func (s *searcher) pass(w *walk, memory, next int) (after int, ok bool) {
	b := &s.net.branches[next]
	if next == w.without {
		return 0, false
	}
	switch b.kind {
	case wire:
		return memory, true
	case device:
		if !w.devices || !w.switches && isolates(b) {
			return 0, false
		}
	case contact:
		if !w.switches && b.class == switchClass {
			return 0, false
		}
	default:
		return 0, false
	}
	m := s.memories[next]
	switch {
	case m == 0:
		return memory, true
	case memory != 0 && memory != m && s.owner[memory] == s.owner[m]:
		return 0, false
	}
	return m, true
}

// isolates tells whether a device also serves as the battery's disconnect.
func isolates(b *branch) bool { return b.comp.Duty.V == "battery-disconnect" }

// enter notes a place if it is new: reached with no memory, or with one that
// was not met there, nor none.
func (s *searcher) enter(p place) {
	if s.mark[p.node] == s.round {
		return
	}
	if s.counted[p.node] != s.round {
		s.counted[p.node], s.count[p.node] = s.round, 0
	}
	if s.count[p.node]++; s.count[p.node] > memoryLimit {
		p.memory = 0
	}
	if p.memory == 0 {
		s.mark[p.node] = s.round
	} else {
		key := remembered{p.node, p.memory}
		if s.marks[key] == s.round {
			s.count[p.node]--
			return
		}
		s.marks[key] = s.round
	}
	s.places = append(s.places, p)
}

// run starts at a node and calls visit for every place reached, nearest first.
func (s *searcher) run(start int, w walk, visit func(at, node int)) {
	s.round++
	s.places = s.places[:0]
	s.enter(place{node: start, over: -1, before: -1})
	for k := 0; k < len(s.places); k++ {
		at := s.places[k]
		visit(k, at.node)
		if at.node == w.barrier {
			continue
		}
		for _, i := range s.net.at[at.node] {
			if after, ok := s.pass(&w, at.memory, i); ok {
				s.enter(place{node: s.net.branches[i].other(at.node), memory: after, over: i, before: k})
			}
		}
	}
}

// reached returns how a place was reached: over which branch, from which node.
func (s *searcher) reached(at int) (step, bool) {
	p := s.places[at]
	if p.before < 0 {
		return step{-1, -1}, false
	}
	return step{p.over, s.places[p.before].node}, true
}

// nodes returns which nodes a search reaches.
func (s *searcher) nodes(start int, w walk) []bool {
	reached := make([]bool, len(s.net.nodes))
	s.run(start, w, func(_, node int) { reached[node] = true })
	return reached
}
