package yard

import (
	"encoding/binary"
	"maps"
	"math"
	"slices"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// Pack writes what is kept of a record as bytes: numbers as varints, and texts,
// most of which come many times, by their number in a table that stands first.
func Pack(k *Kept) []byte {
	p := packer{numbers: map[string]uint64{}, lists: map[string]uint64{}}
	p.record(&k.Record)
	p.number(len(k.Places))
	for _, path := range slices.Sorted(maps.Keys(k.Places)) {
		p.text(path)
		p.span(k.Places[path])
	}
	head := binary.AppendUvarint(nil, uint64(len(p.texts)))
	for _, t := range p.texts {
		head = binary.AppendUvarint(head, uint64(len(t)))
	}
	for _, t := range p.texts {
		head = append(head, t...)
	}
	return append(head, p.body...)
}

type packer struct {
	texts   []string
	numbers map[string]uint64
	lists   map[string]uint64 // of citations, by their bytes
	body    []byte
}

func (p *packer) uint(n uint64) { p.body = binary.AppendUvarint(p.body, n) }
func (p *packer) number(n int)  { p.uint(uint64(n)) } //nolint:gosec // counts and places are not negative

func (p *packer) text(t string) {
	n, ok := p.numbers[t]
	if !ok {
		n = uint64(len(p.texts))
		p.numbers[t] = n
		p.texts = append(p.texts, t)
	}
	p.uint(n)
}

func (p *packer) list(texts []string) {
	p.number(len(texts))
	for _, t := range texts {
		p.text(t)
	}
}

func (p *packer) float(f float64) {
	p.body = binary.LittleEndian.AppendUint64(p.body, math.Float64bits(f))
}

func (p *packer) span(r verdict.Range) {
	for _, n := range []int{r.Start.Line, r.Start.Column, r.End.Line, r.End.Column} {
		p.number(n)
	}
}

func (p *packer) record(r *verdict.Record) {
	for _, t := range []string{r.Job, r.Title, r.Vessel, r.Kind} {
		p.text(t)
	}
	p.list(r.Practice)
	for _, o := range verdict.Outcomes() {
		p.number(r.Counts[o])
	}
	p.number(len(r.Verdicts))
	for i := range r.Verdicts {
		p.verdict(&r.Verdicts[i])
	}
}

func (p *packer) verdict(v *verdict.Verdict) {
	for _, t := range []string{v.Rule.ID, string(v.Outcome), v.Subject, v.Says, v.Remedy, v.ID} {
		p.text(t)
	}
	p.number(int(v.Severity))
	p.span(v.At)
	for _, figures := range [][]verdict.Figure{v.Figures, v.Limit} {
		p.number(len(figures))
		for _, f := range figures {
			p.text(f.Name)
			p.text(f.Text)
			p.number(int(f.Quantity.Dim))
			p.float(f.Quantity.Base)
			p.float(f.Quantity.Value)
			p.text(f.Quantity.Unit)
		}
	}
	p.number(len(v.Missing))
	for _, g := range v.Missing {
		p.text(g.Field)
		p.text(g.Why)
	}
	p.number(len(v.Related))
	for _, r := range v.Related {
		p.text(r.Role)
		p.text(r.Subject)
		p.span(r.At)
	}
	p.waiver(v.Waiver)
	p.cited(v.Sources)
}

func (p *packer) waiver(w *verdict.Waiver) {
	if w == nil {
		p.uint(0)
		return
	}
	p.uint(1)
	for _, t := range []string{w.By, w.Reason, w.Until, w.Path} {
		p.text(t)
	}
	p.span(w.At)
}

// cited writes a list of citations, or the number of an equal one before it.
func (p *packer) cited(all []verdict.Cited) {
	list := packer{texts: p.texts, numbers: p.numbers}
	list.number(len(all))
	for i := range all {
		c := &all[i]
		for _, t := range []string{c.Set, c.Source, c.Clause, c.Asks, string(c.Trust), c.Title, c.Edition, string(c.Force)} {
			list.text(t)
		}
		list.list(c.Needs)
		switch {
		case c.Binds == nil:
			list.uint(0)
		case *c.Binds:
			list.uint(2)
		default:
			list.uint(1)
		}
	}
	p.texts = list.texts
	if n, ok := p.lists[string(list.body)]; ok {
		p.uint(n + 1)
		return
	}
	p.lists[string(list.body)] = uint64(len(p.lists))
	p.uint(0)
	p.body = append(p.body, list.body...)
}

// dimension is a dimension as it is packed.
func dimension(n uint64) quantity.Dimension { return quantity.Dimension(n) } //nolint:gosec // the checksum vouches for it
