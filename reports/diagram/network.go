package diagram

import (
	"slices"

	"driploop/model/record"
)

// shape is the way in which a component is drawn.
type shape uint8

const (
	inline shape = iota // between a conductor from the left and one to the right
	tip                 // at an end of the diagram: conductors on one terminal only
	bar                 // a vertical bar: all studs are one point
	box                 // a frame with its terminals named on both sides
)

// node is a component in the diagram.
type node struct {
	comp  *record.Component
	index int // in the record
	kind  record.Kind
	shape shape
	level int // order from the sources to the loads and back
	col   int

	in, out []*edge // conductors on its left and right, in order of their rows once placed

	row         int // of its symbol
	lead        int // track on which its return runs down, if it leaves at the back
	top, bottom int // the rows that it takes
}

// edge is a drawn conductor: u stands left of v.
type edge struct {
	cond    *record.Conductor
	index   int
	u, v    *node
	uTerm   string
	vTerm   string
	flipped bool // the record runs it from v to u
	primary bool // v was placed along it
	behind  bool // leaves u at the back of its symbol: the return of a source
	row     int  // of its run, from u on
	land    int  // of its end at v
	track   int  // of the vertical piece between, if row and land differ
}

// network is what is drawn of a record.
type network struct {
	rec   *record.Record
	nodes []*node
	edges []*edge
	by    map[string]*node
	stack map[*node]int // of the branches of a folded ladder

	apart  []*node             // components on no drawn conductor
	hidden []*record.Conductor // not drawn as lines
}

// side tells what a conductor is for, as far as the drawing is concerned.
type side uint8

const (
	distribution side = iota
	control
	returning
	bonding
)

// sideOf sorts a conductor. Where the positive pole is the grounded one, it is
// the return.
func sideOf(r *record.Record, c *record.Conductor) side {
	role := c.Role.Or("")
	back := "negative"
	if r.Vessel.Earthing.Or("") == "positive-ground" {
		back = "positive"
	}
	switch role {
	case back:
		return returning
	case "bonding":
		return bonding
	case "control":
		return control
	}
	return distribution
}

// newNetwork sorts out what is drawn as lines, and between which components.
func newNetwork(r *record.Record, returns bool) *network {
	n := &network{rec: r, by: map[string]*node{}}
	for i, c := range r.Components {
		nd := &node{comp: c, index: i, kind: record.KindOf(c.Kind.V)}
		n.nodes = append(n.nodes, nd)
		n.by[c.ID] = nd
	}
	for i, c := range r.Conductors {
		u, v := n.by[c.From.Component], n.by[c.To.Component]
		if (!returns && sideOf(r, c) >= returning) || u == v || u == nil || v == nil {
			n.hidden = append(n.hidden, c)
			continue
		}
		n.edges = append(n.edges, &edge{cond: c, index: i, u: u, v: v, uTerm: c.From.Name, vTerm: c.To.Name})
	}
	n.orient()
	n.nodes, n.apart = split(n.nodes, func(nd *node) bool { return len(nd.in)+len(nd.out) > 0 })
	for _, nd := range n.nodes {
		nd.shape = n.shapeOf(nd)
	}
	return n
}

// split sorts a list into those that fit and the others.
func split(all []*node, fits func(*node) bool) (yes, no []*node) {
	for _, nd := range all {
		if fits(nd) {
			yes = append(yes, nd)
		} else {
			no = append(no, nd)
		}
	}
	return yes, no
}

// side is that of the edge's conductor.
func (n *network) side(e *edge) side { return sideOf(n.rec, e.cond) }

// turn exchanges the ends of an edge.
func (e *edge) turn() {
	e.u, e.v, e.uTerm, e.vTerm, e.flipped = e.v, e.u, e.vTerm, e.uTerm, !e.flipped
}

// terminals lists the terminals on which edges land at one side of a node, each
// once, in order of the edges.
func terminals(edges []*edge, name func(*edge) string) []string {
	var names []string
	for _, e := range edges {
		if !slices.Contains(names, name(e)) {
			names = append(names, name(e))
		}
	}
	return names
}

func (nd *node) inTerminals() []string {
	return terminals(nd.in, func(e *edge) string { return e.vTerm })
}

func (nd *node) outTerminals() []string {
	return terminals(nd.out, func(e *edge) string { return e.uTerm })
}

// shapeOf chooses how a node is drawn, once it is known what lands where. A
// source keeps its plain symbol when its return leaves at the back.
func (n *network) shapeOf(nd *node) shape {
	if nd.kind.OneNode {
		if nd.kind.Name == "ground" && len(nd.out) == 0 {
			return tip
		}
		return bar
	}
	if nd.kind.Name == "controller" {
		return box
	}
	left, right := nd.inTerminals(), nd.outTerminals()
	if nd.kind.Source && len(left) == 0 {
		var front []string
		for _, t := range right {
			if !n.isBack(nd, t) {
				front = append(front, t)
			}
		}
		if len(front) == 1 && len(right) <= 2 {
			for _, e := range nd.out {
				e.behind = e.uTerm != front[0]
			}
			return tip
		}
	}
	switch {
	case len(left)+len(right) == 1 && (nd.kind.Source || nd.kind.Load):
		if nd.kind.Source == (len(left) == 0) {
			return tip
		}
		return inline
	case len(left) <= 1 && len(right) <= 1 && !nd.kind.Source && !slices.Equal(left, right):
		return inline
	}
	return box
}

// isBack tells whether only conductors of the return side leave a terminal.
func (n *network) isBack(nd *node, terminal string) bool {
	for _, e := range nd.out {
		if e.uTerm == terminal && n.side(e) != returning {
			return false
		}
	}
	return true
}
