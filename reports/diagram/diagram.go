// Package diagram lays out and paints the one-line diagram of an installation:
// sources left, loads right, what distributes between them as a ladder of
// straight rungs between vertical bars. Symbols follow IEC 60617.
package diagram

import (
	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/verdict"
)

// Options are the choices of whoever wants a diagram. The zero value is usable.
type Options struct {
	Returns bool            // draw conductors of the return side and bonding, too
	Units   quantity.System // empty: metric
	// Embedded diagrams are part of a page, which has the caution and the findings
	// itself.
	Embedded bool
	// Unlisted diagrams have no list of findings; their marks link to nothing.
	Unlisted bool
	Caution  string // printed at the foot unless embedded
	// Finding is where a mark links to; nil: "#finding-" and the fingerprint.
	Finding func(*verdict.Verdict) string
}

// Diagram is the laid-out diagram of one record.
type Diagram struct {
	rec      *record.Record
	options  Options
	words    words
	net      *network
	plan     *plan
	foot     *foot
	verdicts []verdict.Verdict
	width    float64
	height   float64
	sheet    paper
}

// Lay works out the diagram of a record, and marks on it what verdicts found
// breached or waived. There may be none.
func Lay(r *record.Record, verdicts []verdict.Verdict, o Options) *Diagram {
	if o.Units == "" {
		o.Units = quantity.Metric
	}
	switch {
	case o.Unlisted && !o.Embedded:
		o.Finding = func(*verdict.Verdict) string { return "" }
	case o.Finding == nil:
		o.Finding = func(v *verdict.Verdict) string { return "#" + FindingAnchor(v, r) }
	}
	var best *Diagram
	for stacks := 1; stacks <= mostStacks; stacks++ {
		if d := lay(r, verdicts, o, stacks); best == nil || d.isBetter(best) {
			best = d
		}
	}
	return best
}

// mostStacks is into how many a tall ladder is folded at most.
const mostStacks = 3

// lay works out a diagram with its ladder folded into a number of stacks.
func lay(r *record.Record, verdicts []verdict.Verdict, o Options, stacks int) *Diagram {
	d := &Diagram{rec: r, options: o, verdicts: verdicts}
	d.words = words{rec: r, units: o.Units, marks: newMarks(verdicts, o)}
	d.net = newNetwork(r, o.Returns)
	d.net.fold(stacks)
	d.plan = newPlan(d.net, d.words)
	d.width = max(d.plan.width, leastWidth)
	d.foot = newFoot(d)
	d.height = titleHeight + d.plan.height + d.foot.height
	d.sheet = paperFor(d.Size())
	return d
}

// isBetter tells whether a diagram reads better in print than a plainer one: on
// a smaller sheet, or clearly larger on the same.
func (d *Diagram) isBetter(plainer *Diagram) bool {
	const clearly = 1.1
	switch a, b := d.sheet, plainer.sheet; {
	case a.fits != b.fits:
		return a.fits
	case a.fits && a.size != b.size:
		return a.size < b.size
	default:
		return !a.fits && a.scale > clearly*b.scale
	}
}

// leastWidth keeps titles and legend of a small diagram in order.
const leastWidth = 640.0

// Size returns width and height in units; the ids of components are set 10
// units high.
func (d *Diagram) Size() (width, height float64) { return d.width + 2*margin, d.height + 2*margin }

// AnchorOf is the id of what is drawn for an entry of the record, such as
// "draw-conductors.P1".
func AnchorOf(path string) string { return "draw-" + path }

// FindingAnchor is the id of a verdict in the list of findings, without "#".
func FindingAnchor(v *verdict.Verdict, r *record.Record) string {
	return "finding-" + v.Fingerprint(r.Job.Number.Or(""))
}

// Anchor returns the id of what shows the subject of a verdict, "" if nothing
// does.
func (d *Diagram) Anchor(subject string) string {
	path := entryOf(subject)
	if _, drawn := d.rec.Places.Find(path); drawn && isDrawn(path) {
		return AnchorOf(path)
	}
	return ""
}
