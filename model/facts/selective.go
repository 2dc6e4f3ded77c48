package facts

import (
	"cmp"
	"iter"
	"maps"
	"slices"

	"driploop/model/circuit"
	"driploop/model/figure"
)

// Selectivity is whether a fault behind a device leaves those ahead of it
// closed.
type Selectivity struct {
	// Discrimination is "alone" if no device is ahead of it, "sure" if it surely
	// opens alone, "none" if a device ahead, OpensToo, surely opens no later, and
	// "either" where the gates of the devices leave it open.
	Discrimination *string `json:"discrimination,omitempty"`
	OpensToo       string  `json:"opens_too"`
}

func (b *Builder) selectivity(s *Subject, f *Selectivity, result *circuit.DeviceResult) {
	if len(result.Selective) == 0 {
		f.Discrimination = s.word("alone")
		return
	}
	verdict := "alone"
	var missing []figure.Gap
	var worse []string
	for _, id := range b.inRecordOrder(maps.Keys(result.Selective)) {
		t := result.Selective[id]
		switch {
		case t.Known && !t.Value:
			worse = append(worse, id)
		case t.Known && verdict == "alone":
			verdict = "sure"
		case !t.Known && recorded(t.Gaps):
			verdict = "either"
		case !t.Known:
			missing = append(missing, t.Gaps...)
		}
	}
	f.OpensToo = join(worse)
	switch {
	case len(worse) > 0:
		f.Discrimination = s.word("none")
	case len(missing) > 0:
		s.open("discrimination", missing...)
	default:
		f.Discrimination = s.word(verdict)
	}
}

// recorded tells whether gaps name no entry that the record could still give.
func recorded(gaps []figure.Gap) bool {
	for _, g := range gaps {
		if g.Field != "" {
			return false
		}
	}
	return true
}

// inRecordOrder returns ids of components in the order of the record.
func (v *survey) inRecordOrder(ids iter.Seq[string]) []string {
	return slices.SortedFunc(ids, func(a, b string) int { return cmp.Compare(v.partAt[a], v.partAt[b]) })
}
