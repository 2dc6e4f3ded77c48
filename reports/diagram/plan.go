package diagram

// The measures of a plan, in units.
const (
	margin     = 14.0
	symbolHalf = 8.0  // height of a symbol over the line
	tipHalf    = 10.0 // of a round one at an end
	symbolWide = 26.0
	tipWide    = 24.0
	barWide    = 5.0
	overBar    = 9.0 // by which bars and boxes pass their outer rows
	rowPad     = 4.0
	capHeight  = 13.0 // of the name of a space
	gapEdge    = 6.0  // between a column and what is in its gap
	trackPitch = 7.0
	bandPad    = 4.0
	textGap    = 3.0 // between a text and the line below it
	lineHeight = 10.0
	ascent     = 0.75
)

// plan is where everything of the network stands on the page.
type plan struct {
	net   *network
	words words

	rows, cols    int
	lineY         []float64 // of each row
	rowTop        []float64
	rowBottom     []float64
	colX, colW    []float64
	gaps          []gap // gaps[c+1] lies right of column c; gaps[0] left of all
	regions       []*region
	width, height float64

	labels map[*edge]*label
	bodies map[*node]*body
}

// gap is the room between two columns: verticals of the left column, then
// labels, then verticals of the right column.
type gap struct {
	x, left, labels, right float64
	tracks                 int
	studsLeft, studs       bool // bars right of nodes of the left column, left of nodes of the right one
}

func (g gap) end() float64 { return g.x + g.left + g.labels + g.right }

// label is the text on a conductor, over and under its line, and the
// penetrations that it passes.
type label struct {
	over, under []text
	holes       []*holeMark
	near        bool // within one gap
	col         int  // left of it
}

// body is what is set at a node.
type body struct {
	head        []text
	foot        text
	side        []text // of a load, right of its symbol
	left, right map[string]text
	inner       [2]float64 // widths of the terminals' names in a box
	wide        float64    // of the symbol, bar or box
}

// newPlan places a network.
func newPlan(n *network, w words) *plan {
	p := &plan{net: n, words: w, labels: map[*edge]*label{}, bodies: map[*node]*body{}}
	p.rows = n.setRows()
	for _, nd := range n.nodes {
		p.cols = max(p.cols, nd.col+1)
		p.bodies[nd] = p.newBody(nd)
	}
	for _, e := range n.edges {
		p.labels[e] = p.newLabel(e)
	}
	p.regions = n.regions()
	p.setTracks()
	p.setAcross()
	p.setDown()
	p.setHoles()
	return p
}

// gapAfter is the gap right of a column, gapBefore that left of it.
func (p *plan) gapAfter(col int) *gap  { return &p.gaps[col+1] }
func (p *plan) gapBefore(col int) *gap { return &p.gaps[col] }

// newBody finds the texts of a node and how wide its symbol is.
func (p *plan) newBody(nd *node) *body {
	b := &body{head: p.words.head(nd.comp), foot: p.words.detail(nd.comp)}
	switch {
	case nd.isSided():
		b.wide = tipWide
		b.side, b.head, b.foot = p.words.beside(nd.comp), nil, nil
	case nd.shape == bar:
		b.wide = barWide
	case nd.shape == box:
		b.left, b.inner[0] = names(nd.inTerminals())
		b.right, b.inner[1] = names(nd.outTerminals())
		b.wide = b.inner[0] + b.inner[1] + symbolWide + 10
	case nd.shape == tip:
		b.wide = tipWide
	default:
		b.wide = symbolWide
	}
	return b
}

// isSided tells whether the text of a node stands right of its symbol: that of
// whatever ends a rung.
func (nd *node) isSided() bool {
	return len(nd.out) == 0 && nd.shape == tip
}

// names sets the names of terminals in a box.
func names(terminals []string) (set map[string]text, widest float64) {
	set = map[string]text{}
	for _, t := range terminals {
		set[t] = text{small(t)}.clipped(mostInside)
		widest = max(widest, set[t].width())
	}
	return set, widest
}

// newLabel finds the text of a conductor. One that passes penetrations within
// one gap has it all above the line, since their ids stand below.
func (p *plan) newLabel(e *edge) *label {
	l := &label{col: e.u.col}
	for _, hole := range holesOf(p.net.rec, e) {
		l.holes = append(l.holes, &holeMark{hole: hole, words: p.words.hole(hole)})
	}
	l.near = e.v.col == e.u.col+1
	up, down := p.words.lines(e.cond)
	if l.near && len(l.holes) > 0 {
		l.over = []text{up, down}
	} else {
		l.over, l.under = []text{up}, []text{down}
	}
	return l
}

// widest is the width of the widest of some lines.
func widest(lines []text) float64 {
	w := 0.0
	for _, line := range lines {
		w = max(w, line.width())
	}
	return w
}

// lift is by how much the lowest line over a conductor stands off it.
func (l *label) lift() float64 {
	if len(l.holes) > 0 && l.near {
		return holeHalf + 2.5
	}
	return textGap
}
