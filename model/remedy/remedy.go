// Package remedy seeks, for each breach of a record, the smallest change that
// clears it without causing another, and proves it by judging again.
package remedy

import (
	"cmp"
	"slices"

	"driploop/model/circuit"
	"driploop/model/record"
	"driploop/model/verdict"
)

// Judged is a record with all that was made of it.
type Judged struct {
	Record   *record.Record
	Analysis *circuit.Analysis
	Verdicts *verdict.Record
}

// Judge reads, solves and judges the text of a record.
type Judge func(text []byte) (*Judged, error)

// Cure is a change that clears a breach, proven by judging again.
type Cure struct {
	Changes []record.Change
	// Again lists entries that belong to what is replaced, such as the pull that
	// a crimp of the old conductor held: they have to be taken anew.
	Again []string
	// CopperKG is the mass of copper that it adds, in kg.
	CopperKG float64
	// Work is set if it cannot be made in the record alone: something was
	// measured there, or has to be done on board first.
	Work bool
}

// Item is one breach with what clears it.
type Item struct {
	Breach *verdict.Verdict
	Cure   *Cure  // nil if no change of one thing clears it
	Others []Cure // others that clear it, dearest last
}

// Plan is what was found for a record.
type Plan struct {
	// Made are the cures that Text holds, in the order in which they were made;
	// Tasks are the breaches that are left, worst first.
	Made, Tasks []Item
	Text        []byte
	Before      *verdict.Record
	After       *verdict.Record
}

// Find seeks the cures of all breaches. Those that are a matter of the record
// alone, such as the next gauge or another rating, are made in Text, one upon
// the other; the rest is left as tasks. A record that was signed is left as it
// is: everything is a task.
func Find(name string, text []byte, judge Judge) (*Plan, error) {
	first, err := judge(text)
	if err != nil {
		return nil, err
	}
	plan := &Plan{Text: text, Before: first.Verdicts, After: first.Verdicts}
	f := &finder{name: name, judge: judge, text: text, now: first, signed: signed(first.Record), trials: map[string]*trial{}}
	tried := map[string]bool{}
	for {
		breach := f.next(tried)
		if breach == nil {
			break
		}
		tried[key(breach)] = true
		item := f.cure(breach)
		if item.Cure == nil || item.Cure.Work {
			plan.Tasks = append(plan.Tasks, item)
			continue
		}
		if err := f.make(item.Cure); err != nil {
			return nil, err
		}
		plan.Made = append(plan.Made, item)
	}
	plan.Text, plan.After = f.text, f.now.Verdicts
	plan.Tasks = slices.DeleteFunc(plan.Tasks, func(i Item) bool { return !f.breached(key(i.Breach)) })
	return plan, nil
}

// signed reports whether somebody signed the record.
func signed(r *record.Record) bool { return r.SignOff.By.Is() && r.SignOff.On.Is() }

// key names a verdict among others.
func key(v *verdict.Verdict) string { return v.Rule.ID + " " + v.Subject + " " + v.ID }

// finder seeks cures for the record as it stands.
type finder struct {
	name   string
	judge  Judge
	text   []byte
	now    *Judged
	signed bool
	trials map[string]*trial // of the record as it stands, by change
}

// next returns the worst breach that was not tried yet.
func (f *finder) next(tried map[string]bool) *verdict.Verdict {
	var worst *verdict.Verdict
	for i := range f.now.Verdicts.Verdicts {
		v := &f.now.Verdicts.Verdicts[i]
		if v.Outcome == verdict.Breach && !tried[key(v)] && (worst == nil || v.Severity > worst.Severity) {
			worst = v
		}
	}
	return worst
}

func (f *finder) breached(k string) bool {
	return slices.ContainsFunc(f.now.Verdicts.Verdicts, func(v verdict.Verdict) bool { return v.Outcome == verdict.Breach && key(&v) == k })
}

// cure proves candidates and sorts those that clear the breach, least copper
// first.
func (f *finder) cure(breach *verdict.Verdict) Item {
	item := Item{Breach: breach}
	var proven []Cure
	for _, ladder := range f.candidates(breach) {
		proven = append(proven, f.least(ladder, breach)...)
	}
	if len(proven) == 0 {
		proven = f.least(f.together(breach), breach)
	}
	slices.SortStableFunc(proven, func(a, b Cure) int {
		return cmp.Or(cmpBool(a.Work, b.Work), cmp.Compare(a.CopperKG, b.CopperKG), cmp.Compare(len(a.Changes), len(b.Changes)))
	})
	if len(proven) > 0 {
		item.Cure, item.Others = &proven[0], proven[1:]
	}
	return item
}

// least finds the smallest change of a ladder that clears a breach and does no
// harm; none if there is none. Larger changes of one kind clear what smaller ones
// clear, so that the first is found by halving; one that does harm, such as a
// barrel that no longer fits, may leave the next a chance.
func (f *finder) least(ladder []Cure, breach *verdict.Verdict) []Cure {
	const few = 4 // tried one by one
	if len(ladder) <= few {
		for _, c := range ladder {
			if f.prove(&c, breach) {
				return []Cure{c}
			}
		}
		return nil
	}
	first, _ := slices.BinarySearchFunc(ladder, true, func(c Cure, _ bool) int {
		if f.clears(&c, breach) {
			return 0
		}
		return -1
	})
	const more = 3 // a change much larger than needed is no remedy
	for i := first; i < len(ladder) && i < first+more; i++ {
		if c := ladder[i]; f.prove(&c, breach) {
			return []Cure{c}
		}
	}
	return nil
}

func cmpBool(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

// make changes the record.
func (f *finder) make(c *Cure) error {
	text, err := record.Edit(f.name, f.text, c.Changes...)
	if err != nil {
		return err
	}
	now, err := f.judge(text)
	if err != nil {
		return err
	}
	f.text, f.now, f.trials = text, now, map[string]*trial{}
	return nil
}

// Of seeks the cures of one breach of a text, least copper first.
func Of(name string, text []byte, judge Judge, breach *verdict.Verdict) ([]Cure, error) {
	now, err := judge(text)
	if err != nil {
		return nil, err
	}
	f := &finder{name: name, judge: judge, text: text, now: now, signed: signed(now.Record), trials: map[string]*trial{}}
	for i := range now.Verdicts.Verdicts {
		v := &now.Verdicts.Verdicts[i]
		if v.Outcome != verdict.Breach || key(v) != key(breach) {
			continue
		}
		item := f.cure(v)
		if item.Cure == nil {
			return nil, nil
		}
		return append([]Cure{*item.Cure}, item.Others...), nil
	}
	return nil, nil
}
