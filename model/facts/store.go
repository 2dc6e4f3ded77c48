package facts

import (
	"time"

	"driploop/model/figure"
)

// store is where the values of a document's facts lie that stand neither in the
// record nor in its analysis, and what is missing for those that are not known.
type store struct {
	numbers slab[float64]
	words   slab[string]
	counts  slab[int]
	flags   [2]bool // one place for every "no", one for every "yes"
	lacks   []lack
	reasons []reason
	dated   time.Time // the date that was written last
	day     *string   // and how
}

// lack is one thing that leaves a fact open; there can be several.
type lack struct {
	fact    string
	because reasons
	next    int32 // of the same subject, counted from 1; 0 for none
}

// reason is a gap: an entry by the path of what lacks it and its name there,
// which are put together only for those who ask, or a whole path. See figure.Gap.
type reason struct{ of, entry, why string }

// reasons are a stretch of the document's.
type reasons struct{ first, count int32 }

func (r *reason) gap() figure.Gap {
	if r.entry == "" {
		return figure.Gap{Field: r.of, Why: r.why}
	}
	return figure.Gap{Field: r.of + "." + r.entry, Why: r.why}
}

// reason writes one down. The same is often missing for several facts in a row.
func (st *store) reason(one reason) reasons {
	n := len(st.reasons)
	if n == 0 || st.reasons[n-1] != one {
		st.reasons = append(st.reasons, one)
		n++
	}
	return reasons{int32(n - 1), 1}
}

// gaps writes several down.
func (st *store) gaps(gaps []figure.Gap) reasons {
	if len(gaps) == 1 {
		return st.reason(reason{of: gaps[0].Field, why: gaps[0].Why})
	}
	first := len(st.reasons)
	for _, g := range gaps {
		st.reasons = append(st.reasons, reason{of: g.Field, why: g.Why})
	}
	return reasons{int32(first), int32(len(gaps))}
}

// of returns some reasons.
func (st *store) of(some reasons) []reason { return st.reasons[some.first : some.first+some.count] }

// again writes reasons down once more, behind the last one.
func (st *store) again(some reasons) {
	for i := some.first; i < some.first+some.count; i++ {
		st.reasons = append(st.reasons, st.reasons[i])
	}
}

// reset forgets everything, and keeps the memory. Of what is open it holds no more
// than texts, which the next document writes over.
func (st *store) reset() {
	st.numbers.reset()
	st.words.reset()
	st.counts.reset()
	st.lacks, st.reasons = st.lacks[:0], st.reasons[:0]
	st.dated, st.day = time.Time{}, nil
}
