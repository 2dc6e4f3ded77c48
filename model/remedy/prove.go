package remedy

import (
	"fmt"
	"slices"

	"driploop/model/record"
	"driploop/model/verdict"
)

// prove judges the record with a change made, and what belongs to the replaced
// thing unknown. The breach has to be gone for a reason: the rule is met or
// does not apply, or waits for what has to be taken anew. No other breach may
// come, and nothing may become undecided but for that, or for what is to be
// said of the changed part itself.
func (f *finder) prove(c *Cure, breach *verdict.Verdict) bool {
	then := f.with(c)
	if then == nil || breached(then, breach) != nil {
		return false
	}
	before := map[string]verdict.Outcome{}
	for i := range f.now.Verdicts.Verdicts {
		v := &f.now.Verdicts.Verdicts[i]
		before[key(v)] = v.Outcome
	}
	parts := []string{breach.Subject}
	for _, change := range c.Changes {
		parts = append(parts, record.PartOf(change.Path))
	}
	again := slices.Clone(c.Again)
	for i := range then.verdicts {
		v := &then.verdicts[i]
		was := before[key(v)]
		switch {
		case v.Outcome == verdict.Breach && was != verdict.Breach && was != verdict.Waived:
			return false
		case v.Outcome != verdict.Undecided || was == verdict.Undecided || waitsFor(v, again):
		case key(v) == key(breach) || !waitsFor(v, parts):
			return false
		default:
			for _, gap := range v.Missing {
				again = append(again, gap.Field)
			}
		}
	}
	c.Again = again
	c.CopperKG = then.copperKG - copperMass(f.now)
	c.Work = c.Work || f.signed || len(c.Again) > 0
	return true
}

// clears reports whether a breach is gone with a change made, whatever else comes.
func (f *finder) clears(c *Cure, breach *verdict.Verdict) bool {
	then := f.with(c)
	return then != nil && breached(then, breach) == nil
}

// breached finds a breach in what was judged; nil if it is gone.
func breached(then *trial, breach *verdict.Verdict) *verdict.Verdict {
	for i := range then.verdicts {
		if v := &then.verdicts[i]; v.Outcome == verdict.Breach && key(v) == key(breach) {
			return v
		}
	}
	return nil
}

// with judges the record with a change made and what has to be taken anew
// unknown; nil if that is no record.
func (f *finder) with(c *Cure) *trial {
	changes := slices.Clone(c.Changes)
	for _, path := range c.Again {
		changes = append(changes, record.Change{Path: path, Value: "unknown"})
	}
	return f.tried(changes)
}

// trial is what a change came to: the verdicts that are breached or undecided, and
// the copper in it. The record itself is not kept: there are hundreds of trials.
type trial struct {
	verdicts []verdict.Verdict
	copperKG float64
}

// tried judges the record with changes made; nil if it then is no record any
// more, or an anchor shares an entry with others. Breaches have candidates in
// common, so that what was judged is kept.
func (f *finder) tried(changes []record.Change) *trial {
	id := fmt.Sprint(changes)
	if then, done := f.trials[id]; done {
		return then
	}
	f.trials[id] = nil
	text, err := record.Edit(f.name, f.text, changes...)
	if err != nil {
		return nil
	}
	judged, err := f.judge(text)
	if err != nil {
		return nil
	}
	then := &trial{copperKG: copperMass(judged)}
	for _, v := range judged.Verdicts.Verdicts {
		if v.Outcome == verdict.Breach || v.Outcome == verdict.Undecided {
			then.verdicts = append(then.verdicts, v)
		}
	}
	f.trials[id] = then
	return then
}

// waitsFor reports whether all that a verdict waits for is among entries, or in
// parts.
func waitsFor(v *verdict.Verdict, among []string) bool {
	for _, gap := range v.Missing {
		if !slices.ContainsFunc(among, func(path string) bool { return record.Within(gap.Field, path) }) {
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
