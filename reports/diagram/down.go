package diagram

// reach is how far something stands above and below the line of its row.
type reach struct{ above, below float64 }

func (r *reach) add(above, below float64) {
	r.above, r.below = max(r.above, above), max(r.below, below)
}

// setDown finds the rows.
func (p *plan) setDown() {
	reaches := make([]reach, p.rows)
	for nd, b := range p.bodies {
		p.nodeReach(nd, b, reaches)
		reaches[nd.top].add(p.over(nd, b)+p.nameOver(nd), 0)
	}
	for e, l := range p.labels {
		over, under := l.lift()+float64(len(l.over))*lineHeight, 4.0
		if len(l.under) > 0 {
			under = textGap + float64(len(l.under))*lineHeight
		}
		if len(l.holes) > 0 {
			under = max(under, holeHalf+textGap+smallSize+float64(tiers(l.holes)-1)*tierHeight)
		}
		reaches[e.row].add(over, under)
		reaches[e.land].add(smallSize/2, smallSize/2) // the name of a terminal
	}
	p.lineY, p.rowTop, p.rowBottom = make([]float64, p.rows), make([]float64, p.rows), make([]float64, p.rows)
	y := 0.0
	for r, size := range reaches {
		p.rowTop[r] = y
		p.lineY[r] = y + size.above
		y = p.lineY[r] + size.below
		p.rowBottom[r] = y
		y += rowPad
	}
	p.height = y
}

// nodeReach is how far a node reaches below its outer rows.
func (p *plan) nodeReach(nd *node, b *body, reaches []reach) {
	if nd.isSided() {
		reaches[nd.row].add(tipHalf+2, tipHalf+2)
		return
	}
	top, bottom, half := p.extent(nd)
	reaches[top].add(p.over(nd, b), half)
	reaches[bottom].add(half, half+1)
	if b.foot != nil {
		reaches[bottom].add(0, half+textGap+detailSize)
	}
}

// over is how far a node reaches above its upper row.
func (p *plan) over(nd *node, b *body) float64 {
	if nd.isSided() {
		return tipHalf + 2
	}
	_, _, half := p.extent(nd)
	return half + textGap + float64(len(b.head))*lineHeight
}

// nameOver is the room for the name of a space that begins with a node.
func (p *plan) nameOver(nd *node) float64 {
	for _, r := range p.regions {
		if r.first.col == nd.col && r.first.top == nd.top {
			return capHeight
		}
	}
	return 0
}

// extent is the rows that the symbol of a node spans, and how far it passes them.
func (p *plan) extent(nd *node) (top, bottom int, half float64) {
	switch nd.shape {
	case bar, box:
		return nd.top, nd.bottom, overBar
	}
	return nd.row, nd.row, symbolHeight(nd.kind.Name)
}
