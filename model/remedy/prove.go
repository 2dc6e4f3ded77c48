package remedy

import (
	"fmt"
	"slices"
	"strings"

	"driploop/model/record"
	"driploop/model/verdict"
)

// prove judges the record with a change made, and what belongs to the replaced
// thing unknown. The breach has to be gone for a reason: the rule is met or
// does not apply, or waits for what has to be taken anew. No other breach may
// come, and nothing may become undecided but for that.
func (f *finder) prove(c *Cure, breach *verdict.Verdict) bool {
	changes := slices.Clone(c.Changes)
	for _, path := range c.Again {
		changes = append(changes, record.Change{Path: path, Value: "unknown"})
	}
	then := f.tried(changes)
	if then == nil {
		return false
	}
	before := map[string]verdict.Outcome{}
	for i := range f.now.Verdicts.Verdicts {
		v := &f.now.Verdicts.Verdicts[i]
		before[key(v)] = v.Outcome
	}
	for i := range then.Verdicts.Verdicts {
		v := &then.Verdicts.Verdicts[i]
		was := before[key(v)]
		switch {
		case v.Outcome == verdict.Breach && was != verdict.Breach && was != verdict.Waived:
			return false
		case v.Outcome == verdict.Breach && key(v) == key(breach):
			return false
		case v.Outcome == verdict.Undecided && was != verdict.Undecided && !waitsFor(v, c.Again):
			return false
		}
	}
	c.CopperKG = copperMass(then) - copperMass(f.now)
	c.Work = c.Work || f.signed || len(c.Again) > 0
	return true
}

// tried judges the record with changes made; nil if it then is no record any
// more, or an anchor shares an entry with others. Breaches have candidates in
// common, so that what was judged is kept.
func (f *finder) tried(changes []record.Change) *Judged {
	id := fmt.Sprint(changes)
	if then, done := f.trials[id]; done {
		return then
	}
	f.trials[id] = nil
	text, err := record.Edit(f.name, f.text, changes...)
	if err != nil {
		return nil
	}
	then, err := f.judge(text)
	if err != nil {
		return nil
	}
	f.trials[id] = then
	return then
}

// waitsFor reports whether all that a verdict waits for has to be taken anew.
func waitsFor(v *verdict.Verdict, again []string) bool {
	for _, gap := range v.Missing {
		if !slices.ContainsFunc(again, func(path string) bool { return gap.Field == path || strings.HasPrefix(gap.Field, path) }) {
			return false
		}
	}
	return len(v.Missing) > 0
}

// density is that of copper at 20 °C in kg/mm³: 8.89 g/cm³, IEC 60028:1925,
// clause 1 (from memory, unverified).
const density = 8.89e-6

// copperMass is the mass of copper in all conductors of which size and length are
// known, in kg.
func copperMass(j *Judged) float64 {
	sum := 0.0
	for _, c := range j.Record.Conductors {
		r := j.Analysis.Conductors[c.ID]
		length, known := c.Length.Get()
		if r != nil && known && r.AreaMM2.Known {
			sum += r.AreaMM2.Value * length.In("mm") * density
		}
	}
	return sum
}
