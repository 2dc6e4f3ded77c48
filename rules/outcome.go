package rules

import (
	"math"
	"math/bits"
	"slices"

	"driploop/model/verdict"
)

// judged is the outcome of one rule on one subject, before words.
type judged struct {
	outcome verdict.Outcome
	sets    mask // practice sets that speak: breached, else applicable, else in force
	shown   finding
	clauses map[mask]string // the only clause to cite of a set
	missing []verdict.Gap
}

// judge turns what the Rego of a rule says of a subject into the outcome. A
// breach is certain and wins over what is missing; a missing fact wins over met.
func (r *rule) judge(at *site, inForce mask, says *opinion) judged {
	admitted := inForce &^ says.excludes
	applicable := admitted & says.applies
	if len(says.findings) > 0 {
		if j, breached := r.breached(says.findings, applicable); breached {
			return j
		}
	}
	missing := gapList{}
	if unsettled := admitted &^ applicable; unsettled != 0 {
		missing.addAll(at, r.decides)
		for _, a := range says.asks {
			if a.sets&unsettled != 0 && a.need.deciding {
				missing.add(at, a.need)
			}
		}
	}
	if applicable == 0 && len(missing.gaps) == 0 {
		return judged{outcome: verdict.NotApplicable, sets: inForce}
	}
	if applicable != 0 {
		missing.addAll(at, r.needs)
		for i := range r.decides {
			if r.decides[i].judging {
				missing.add(at, &r.decides[i])
			}
		}
		for _, c := range r.clauses {
			if c.set&applicable != 0 {
				missing.addAll(at, c.needs)
			}
		}
		for _, a := range says.asks {
			if a.sets&applicable != 0 {
				missing.add(at, a.need)
			}
		}
	}
	if len(missing.gaps) > 0 {
		return judged{outcome: verdict.Undecided, sets: inForce, missing: missing.gaps}
	}
	return judged{outcome: verdict.Met, sets: applicable}
}

// breached gathers the findings of the applicable sets: all are cited, and of
// the gravest the one with the strictest limit is shown.
func (r *rule) breached(findings []finding, applicable mask) (judged, bool) {
	j := judged{outcome: verdict.Breach, clauses: map[mask]string{}}
	best := math.Inf(-1)
	for _, f := range findings {
		f.sets &= applicable
		if f.sets == 0 {
			continue
		}
		f.severity = min(f.severity, r.ceiling(f.sets))
		if far := f.distance(); j.sets == 0 || f.severity > j.shown.severity || f.severity == j.shown.severity && far > best {
			j.shown, best = f, far
		}
		j.cite(f)
	}
	return j, j.sets != 0
}

// cite adds the sets of a finding. A clause narrows the citation of a set only
// if every finding of the set names the same.
func (j *judged) cite(f finding) {
	for rest := f.sets; rest != 0; rest &= rest - 1 {
		set := mask(1) << bits.TrailingZeros32(uint32(rest))
		if clause, cited := j.clauses[set]; j.sets&set == 0 {
			j.clauses[set] = f.clause
		} else if cited && clause != f.clause {
			j.clauses[set] = ""
		}
	}
	j.sets |= f.sets
}

// ceiling is the gravest severity that the trust of the sets' sources allows:
// what is quoted from memory alone is a caution at most.
func (r *rule) ceiling(sets mask) verdict.Severity {
	var cited []verdict.Citation
	for _, c := range r.meta.Sources {
		if r.bit(c.Set)&sets != 0 {
			cited = append(cited, c)
		}
	}
	if unverified(cited) {
		return min(r.meta.Severity, verdict.Caution)
	}
	return r.meta.Severity
}

// distance is how far the figures lie from the limit, as a share of the figure;
// the greatest over the quantities that have both.
func (f *finding) distance() float64 {
	far := 0.0
	for _, limit := range f.limit {
		i := slices.IndexFunc(f.figures, func(g verdict.Figure) bool { return g.Name == limit.Name })
		if i < 0 || limit.Text != "" || f.figures[i].Text != "" {
			continue
		}
		value, bound := f.figures[i].Quantity.Base, limit.Quantity.Base
		if value == 0 {
			return math.Inf(1)
		}
		far = max(far, math.Abs(value-bound)/math.Abs(value))
	}
	return far
}

// gapList collects what is missing, each gap once.
type gapList struct{ gaps []verdict.Gap }

// addAll adds the gaps of those facts that the subject, or the vessel or job
// they belong to, lacks.
func (l *gapList) addAll(at *site, facts []need) {
	for i := range facts {
		l.add(at, &facts[i])
	}
}

func (l *gapList) add(at *site, n *need) {
	if at.holder(n.fact) == nil {
		l.gap(verdict.Gap{Field: n.of.name})
		return
	}
	if at.cell(n.fact).state != absent {
		return
	}
	gaps := at.gaps(n.fact)
	if len(l.gaps) == 0 {
		l.gaps = slices.Clip(gaps) // most verdicts lack one fact, and share its gaps
		return
	}
	for _, g := range gaps {
		l.gap(g)
	}
}

func (l *gapList) gap(g verdict.Gap) {
	if !slices.Contains(l.gaps, g) {
		l.gaps = append(l.gaps, g)
	}
}
