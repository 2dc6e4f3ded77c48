package yard

import (
	"encoding/binary"
	"math"
	"unsafe"

	"driploop/model/verdict"
)

// Unpack reads what Pack wrote; rule finds a rule by its id. It returns false for
// bytes that Pack did not write, or of rules that are there no longer.
func Unpack(body []byte, rule func(id string) *verdict.Rule) (k Kept, ok bool) {
	u := unpacker{body: body, rule: rule}
	u.table()
	u.record(&k.Record)
	k.Places = map[string]verdict.Range{}
	for n := u.count(5); n > 0; n-- {
		path := u.text()
		k.Places[path] = u.span()
	}
	return k, !u.bad && len(u.body) == 0
}

type unpacker struct {
	body  []byte
	texts []string
	lists [][]verdict.Cited
	rule  func(id string) *verdict.Rule
	bad   bool
}

func (u *unpacker) uint() uint64 {
	n, size := binary.Uvarint(u.body)
	if size <= 0 {
		u.bad, u.body = true, nil
		return 0
	}
	u.body = u.body[size:]
	return n
}

func (u *unpacker) number() int {
	n := u.uint()
	if n > math.MaxInt32 {
		u.bad, n = true, 0
	}
	return int(n) //nolint:gosec // bounded above
}

// count reads how many parts follow, each of some bytes at least.
func (u *unpacker) count(each int) int {
	n := u.number()
	if n > len(u.body)/each {
		u.bad, u.body, n = true, nil, 0
	}
	return n
}

// table reads the texts. They share the memory of the body, which nobody writes.
func (u *unpacker) table() {
	lengths := make([]int, u.count(1))
	for i := range lengths {
		lengths[i] = u.number()
	}
	u.texts = make([]string, len(lengths))
	for i, n := range lengths {
		if n > len(u.body) {
			u.bad, u.body = true, nil
			return
		}
		if n > 0 {
			u.texts[i] = unsafe.String(&u.body[0], n) //nolint:gosec // see above
		}
		u.body = u.body[n:]
	}
}

func (u *unpacker) text() string {
	n := u.uint()
	if n >= uint64(len(u.texts)) {
		u.bad = true
		return ""
	}
	return u.texts[n]
}

func (u *unpacker) list() []string {
	n := u.count(1)
	if n == 0 {
		return nil
	}
	all := make([]string, n)
	for i := range all {
		all[i] = u.text()
	}
	return all
}

func (u *unpacker) float() float64 {
	if len(u.body) < 8 {
		u.bad, u.body = true, nil
		return 0
	}
	f := math.Float64frombits(binary.LittleEndian.Uint64(u.body))
	u.body = u.body[8:]
	return f
}

func (u *unpacker) span() (r verdict.Range) {
	for _, n := range []*int{&r.Start.Line, &r.Start.Column, &r.End.Line, &r.End.Column} {
		*n = u.number()
	}
	return r
}

func (u *unpacker) record(r *verdict.Record) {
	for _, t := range []*string{&r.Job, &r.Title, &r.Vessel, &r.Kind} {
		*t = u.text()
	}
	r.Practice = u.list()
	r.Counts = verdict.Counts{}
	for _, o := range verdict.Outcomes() {
		r.Counts[o] = u.number()
	}
	r.Verdicts = make([]verdict.Verdict, u.count(18))
	for i := range r.Verdicts {
		u.verdict(&r.Verdicts[i])
		if u.bad {
			return
		}
	}
}

func (u *unpacker) verdict(v *verdict.Verdict) {
	if v.Rule = u.rule(u.text()); v.Rule == nil {
		u.bad = true
		return
	}
	v.Outcome = verdict.Outcome(u.text())
	for _, t := range []*string{&v.Subject, &v.Says, &v.Remedy, &v.ID} {
		*t = u.text()
	}
	severity := u.uint()
	u.bad = u.bad || severity > uint64(verdict.Danger)
	v.Severity = verdict.Severity(severity) //nolint:gosec // bounded above
	v.At = u.span()
	v.Figures, v.Limit = u.figures(), u.figures()
	if n := u.count(2); n > 0 {
		v.Missing = make([]verdict.Gap, n)
		for i := range v.Missing {
			v.Missing[i] = verdict.Gap{Field: u.text(), Why: u.text()}
		}
	}
	if n := u.count(6); n > 0 {
		v.Related = make([]verdict.Related, n)
		for i := range v.Related {
			v.Related[i] = verdict.Related{Role: u.text(), Subject: u.text(), At: u.span()}
		}
	}
	if u.uint() > 0 {
		v.Waiver = &verdict.Waiver{By: u.text(), Reason: u.text(), Until: u.text(), Path: u.text(), At: u.span()}
	}
	v.Sources = u.cited()
}

func (u *unpacker) figures() []verdict.Figure {
	n := u.count(20)
	if n == 0 {
		return nil
	}
	all := make([]verdict.Figure, n)
	for i := range all {
		f := &all[i]
		f.Name, f.Text = u.text(), u.text()
		f.Quantity.Dim = dimension(u.uint())
		f.Quantity.Base, f.Quantity.Value, f.Quantity.Unit = u.float(), u.float(), u.text()
	}
	return all
}

func (u *unpacker) cited() []verdict.Cited {
	if n := u.uint(); n > 0 {
		if n > uint64(len(u.lists)) {
			u.bad = true
			return nil
		}
		return u.lists[n-1]
	}
	var all []verdict.Cited
	if n := u.count(10); n > 0 {
		all = make([]verdict.Cited, n)
	}
	for i := range all {
		c := &all[i]
		c.Set, c.Source, c.Clause, c.Asks, c.Trust = u.text(), u.text(), u.text(), u.text(), verdict.Trust(u.text())
		c.Title, c.Edition, c.Force = u.text(), u.text(), verdict.Force(u.text())
		c.Needs = u.list()
		if binds := u.uint(); binds > 0 {
			yes := binds == 2
			c.Binds = &yes
		}
	}
	u.lists = append(u.lists, all)
	return all
}
