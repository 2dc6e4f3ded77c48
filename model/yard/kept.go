package yard

import (
	"driploop/model/verdict"
)

// Kept is what the cache keeps of one record that was judged.
type Kept struct {
	Record verdict.Record
	// Places holds where those entries stand that a report looks up: that of the
	// job, and those of each entry that is missing and of what it is a part of.
	Places map[string]verdict.Range
}

// Find returns where an entry stands, if it is one of those that are kept.
func (k *Kept) Find(path string) (verdict.Range, bool) {
	at, ok := k.Places[path]
	return at, ok
}

// Keep picks from a judged record what is kept: with all every verdict, else
// those that are listed. Where entries stand is told by at.
func Keep(rec *verdict.Record, at func(path string) (verdict.Range, bool), all bool) Kept {
	k := Kept{Record: *rec, Places: map[string]verdict.Range{}}
	k.Record.Verdicts = []verdict.Verdict{}
	k.place(at, "job")
	for i := range rec.Verdicts {
		v := &rec.Verdicts[i]
		if !all && (v.Outcome == verdict.Met || v.Outcome == verdict.NotApplicable) {
			continue
		}
		k.Record.Verdicts = append(k.Record.Verdicts, *v)
		for _, gap := range v.Missing {
			k.place(at, gap.Field)
		}
	}
	return k
}

// place keeps the places of an entry and of the parts of the record that it
// belongs in.
func (k *Kept) place(at func(path string) (verdict.Range, bool), path string) {
	for path != "" {
		if place, ok := at(path); ok {
			k.Places[path] = place
		}
		path = above(path)
	}
}

// above takes the last step off a path.
func above(path string) string {
	for i := len(path) - 1; i > 0; i-- {
		if path[i] == '.' || path[i] == '[' {
			return path[:i]
		}
	}
	return ""
}
