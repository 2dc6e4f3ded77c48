package circuit

import (
	"driploop/model/figure"
	"driploop/model/record"
)

// branchKind is what a branch of the network is.
type branchKind uint8

const (
	wire    branchKind = iota // a conductor, from "from" to "to"
	device                    // a fuse or breaker, from line to load
	contact                   // a link inside a switch, relay, controller or connector
	source                    // a battery or charging source, from pos to neg
	load                      // what draws current, from pos to neg
	coil                      // the coil of a relay or controller
)

// branch is one element between two nodes.
type branch struct {
	kind branchKind
	id   string // of the conductor or component
	path string // of its entry in the record
	a, b int    // nodes, in the order that its kind names

	cond  *record.Conductor
	metal *metal // of a conductor
	lands [2]int // the terminals that it lands on
	comp  *record.Component
	class class

	// when is the command or position in which the branch is closed; empty if it
	// always is (switches and devices count as closed). choice is set if its
	// component has links of differing commands, of which one holds at a time.
	when   string
	choice bool

	ohms    span // resistance; of a source, internal
	*giving      // of a source
	*taking      // of a load or coil
}

// giving is what a source gives.
type giving struct {
	limit span    // greatest current of a charging source
	emf   [2]span // voltage, by supply
}

// taking is what a load or coil takes.
type taking struct {
	draw    drawKind
	current span // of one drawing constant current
	watts   span // of one drawing constant power
}

// lacks tells whether something that its current may depend on is not recorded.
func (b *branch) lacks() bool {
	return b.ohms.open() ||
		b.taking != nil && (b.current.open() || b.watts.open()) ||
		b.giving != nil && (b.limit.open() || b.emf[full].open())
}

// drawKind is how a load answers to voltage.
type drawKind uint8

const (
	constantCurrent drawKind = iota
	constantPower
	resistive
)

// node is a point of one potential: a terminal, or all studs of a busbar.
type node struct {
	name  string // first terminal, such as "house.pos"; "pos-bus" for a busbar
	comp  string
	class class
	first int // of its terminals
}

// terminal is a terminal of a component that something lands on.
type terminal struct {
	comp, name string
	label      string // such as "house.pos"
	node       int
	next       int // terminal of the same component, in the order met; -1 for none
}

// part is a component of the record, the first of its id.
type part struct {
	*record.Component
	class         class
	start, end    int      // its branches
	first, latest int      // terminals, -1 for none
	choices       []string // the commands or positions that its links name
}

// network is the graph of one record: terminals and what lies between them.
type network struct {
	record       *record.Record
	nodes        []node
	terminals    []terminal
	branches     []branch          // conductors first
	wires        int               // of its branches
	at           [][]int           // branches at each node, in order
	index        map[[2]string]int // terminals by component and name
	parts        []part
	comps        map[string]int // part by id
	conds        map[string]int // branch of a conductor
	coilBranches []int
	spaces       map[string]*record.Space
	bundles      *bundles
	anyOpen      bool // something that currents may depend on is not recorded
	hops         slab[hop]
	room         []int // that a search of the network writes into, and the next one over
}

// roomFor returns memory for a number of integers, of which only one part is in use
// at a time.
func (n *network) roomFor(count int) []int {
	if cap(n.room) < count {
		n.room = make([]int, count)
	}
	n.room = n.room[:count]
	clear(n.room)
	return n.room
}

// span is a value that may be a range, or not be known: then gaps say why and
// the ends are only where it might lie.
type span struct {
	low, high float64
	gaps      []figure.Gap
	working   func() []figure.Step // of the least end first; nil: none
}

func exactly(v float64) span { return span{low: v, high: v} }

// by returns the span with a step of working.
func (s span) by(step func() figure.Step) span {
	s.working = func() []figure.Step { return []figure.Step{step()} }
	return s
}

func (s span) open() bool { return len(s.gaps) > 0 }

// other returns the node at the far side of a branch.
func (b *branch) other(n int) int {
	if b.a == n {
		return b.b
	}
	return b.a
}

// part returns a component by id, nil if there is none.
func (n *network) part(id string) *part {
	if k, ok := n.comps[id]; ok {
		return &n.parts[k]
	}
	return nil
}

// oneNode tells whether all terminals of a component are one node.
func (c class) oneNode() bool { return c == nodeClass || c == groundClass }

// terminalOf returns a terminal, made if need be, its node with it.
func (n *network) terminalOf(comp, name string) int {
	key := [2]string{comp, name}
	if t, ok := n.index[key]; ok {
		return t
	}
	t := terminal{comp: comp, name: name, label: comp + "." + name, node: -1, next: -1}
	at := node{name: t.label, comp: comp, first: len(n.terminals)}
	if p := n.part(comp); p != nil {
		at.class = p.class
		if p.first < 0 {
			p.first = len(n.terminals)
		} else {
			n.terminals[p.latest].next = len(n.terminals)
			if p.class.oneNode() {
				t.node = n.terminals[p.latest].node
			}
		}
		p.latest = len(n.terminals)
		if p.class.oneNode() {
			at.name = comp
		}
	}
	if t.node < 0 {
		t.node = len(n.nodes)
		n.nodes = append(n.nodes, at)
	}
	n.index[key] = len(n.terminals)
	n.terminals = append(n.terminals, t)
	return len(n.terminals) - 1
}

// nodeOf returns the node of a terminal, made if need be.
func (n *network) nodeOf(comp, name string) int { return n.terminals[n.terminalOf(comp, name)].node }

// labels calls a function with each terminal of a node, in the order met.
func (n *network) labels(i int, visit func(label string)) {
	at := &n.nodes[i]
	for t := at.first; t >= 0; t = n.terminals[t].next {
		visit(n.terminals[t].label)
		if !at.class.oneNode() {
			return
		}
	}
}

func (n *network) add(b branch) int {
	i := len(n.branches)
	n.branches = append(n.branches, b)
	if b.kind == coil {
		n.coilBranches = append(n.coilBranches, i)
	}
	return i
}

// joinNodes notes the branches at each node.
func (n *network) joinNodes() {
	count := make([]int, len(n.nodes))
	for i := range n.branches {
		b := &n.branches[i]
		count[b.a]++
		if b.b != b.a {
			count[b.b]++
		}
	}
	n.at = make([][]int, len(n.nodes))
	all := make([]int, 2*len(n.branches))
	for node, c := range count {
		n.at[node], all = all[:0:c], all[c:]
	}
	for i := range n.branches {
		b := &n.branches[i]
		n.at[b.a] = append(n.at[b.a], i)
		if b.b != b.a {
			n.at[b.b] = append(n.at[b.b], i)
		}
	}
}
