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
	metal metal // of a conductor
	comp  *record.Component
	class class

	// when is the command or position in which the branch is closed; empty if it
	// always is (switches and devices count as closed). choice is set if its
	// component has links of differing commands, of which one holds at a time.
	when   string
	choice bool

	ohms    span    // resistance; of a source, internal
	limit   span    // greatest current of a charging source
	emf     [2]span // voltage of a source, by supply
	current span    // of a load or coil drawing constant current
	watts   span    // of a load drawing constant power
	draw    drawKind
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
	name      string // first terminal, such as "house.pos"; "pos-bus" for a busbar
	comp      string
	class     class
	terminals []string // terminals that are this node, in the order met
}

// network is the graph of one record: terminals and what lies between them.
type network struct {
	record       *record.Record
	nodes        []node
	branches     []branch
	at           [][]int // branches at each node, in order
	index        map[string]int
	comps        map[string]*record.Component
	conds        map[string]int // branch of a conductor
	byComp       map[string][]int
	nodesBy      map[string][]int
	coilBranches []int
	spaces       map[string]*record.Space
	bundles      *bundles
	anyOpen      bool // something that currents may depend on is not recorded
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

// nodeOf returns the node of a terminal, made if need be.
func (n *network) nodeOf(comp, terminal string) int {
	name := comp + "." + terminal
	key := name
	c := n.comps[comp]
	cls := loadClass
	if c != nil {
		cls = classOf(c)
		if cls == nodeClass || cls == groundClass {
			key = comp
		}
	}
	i, ok := n.index[key]
	if !ok {
		i = len(n.nodes)
		n.index[key] = i
		n.nodesBy[comp] = append(n.nodesBy[comp], i)
		n.nodes = append(n.nodes, node{name: key, comp: comp, class: cls})
		n.at = append(n.at, nil)
	}
	if key != name || !ok {
		n.noteTerminal(i, name)
	}
	return i
}

func (n *network) noteTerminal(i int, name string) {
	if _, seen := n.index[name]; seen && n.nodes[i].name != name {
		return
	}
	n.index[name] = i
	n.nodes[i].terminals = append(n.nodes[i].terminals, name)
}

func (n *network) add(b branch) int {
	i := len(n.branches)
	n.branches = append(n.branches, b)
	n.at[b.a] = append(n.at[b.a], i)
	if b.b != b.a {
		n.at[b.b] = append(n.at[b.b], i)
	}
	if b.comp != nil {
		n.byComp[b.id] = append(n.byComp[b.id], i)
	}
	if b.kind == coil {
		n.coilBranches = append(n.coilBranches, i)
	}
	return i
}
