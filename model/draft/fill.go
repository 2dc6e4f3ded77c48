package draft

import (
	"fmt"
	"slices"
	"strings"

	"driploop/model/record"
	"driploop/model/verdict"
)

// Judge judges the text of a record.
type Judge func(text []byte) (*verdict.Record, error)

// What cables, ends and stretches of cable have in common is written once: by all
// of a job, by those of one gauge, by those on one component, or in one space.
// Where one differs it says so itself.
var (
	sharedByCables = []string{"insulation", "compound", "wet", "oil_resistant", "material", "class", "tinned", "standard", "labelled", "sheath", "twisted", "splices"}
	sharedByEnds   = []string{"terminal", "soldered", "plating", "metal", "slack", "damaged_strands", "broken_strands", "washer_in_path", "nut", "cover"}
	sharedByGauge  = []string{"strands", "diameter", "barrel", "crimp"}
	sharedByPost   = []string{"hole", "stud", "torque", "torque_range"}
	sharedInSpace  = []string{"in", "support_kind", "bilge", "walkway", "protected", "with_ac", "exhaust_dry", "exhaust_wet", "fuel_line", "fuel_line_side", "moving_parts", "made_for_water", "rigid_support", "loom_rating"}
)

// fill adds every entry that a rule waits for, as unknown, until none is left
// to add.
func (s *skeleton) fill(judge Judge) error {
	const rounds = 8 // an entry can bring others, such as a crimp its pull
	for range rounds {
		judged, err := judge(s.text())
		if err != nil {
			return err
		}
		added := false
		for i := range judged.Verdicts {
			for _, gap := range judged.Verdicts[i].Missing {
				added = s.ask(gap.Field) || added
			}
		}
		if !added {
			return nil
		}
	}
	return nil
}

// ask adds an entry, unless it is there.
func (s *skeleton) ask(path string) bool {
	f, ok := record.Describe(path, s.kindOf)
	if !ok || f.Part {
		return false
	}
	steps := strings.Split(strings.ReplaceAll(path, "[", ".["), ".")
	ats := []*item{s.root}
	for _, step := range steps[:len(steps)-1] {
		ats = s.enter(ats, step)
	}
	key, added := steps[len(steps)-1], false
	for _, at := range ats {
		to := holder(at, key)
		if to.find(key) != nil {
			continue
		}
		s.spread(to, key, func(to *item) {
			if to.own(key) == nil {
				s.put(to, key, f)
				added = true
			}
		})
	}
	return added
}

// enter goes one step into parts, and makes what is not there, with all that
// has to have it too.
func (s *skeleton) enter(ats []*item, step string) []*item {
	var next []*item
	for _, at := range ats {
		if there := at.step(step); there != nil {
			next = append(next, there)
			continue
		}
		s.spread(holder(at, step), step, func(to *item) {
			if to.own(step) == nil {
				to.add(part(step))
				next = append(next, to.own(step))
			}
		})
	}
	return next
}

// spread adds an entry to a part and to those that merge it and do not share
// that entry: each has to say it for itself.
func (s *skeleton) spread(to *item, key string, add func(*item)) {
	add(to)
	for _, other := range s.mergers(to) {
		if !to.shares(other, key) {
			s.spread(other, key, add)
		}
	}
}

func (s *skeleton) put(to *item, key string, f record.Field) {
	entry := &item{key: key, value: unknown, comment: f.Hint()}
	if value := s.trialValue(to, key); s.trial && value != "" {
		entry.value, entry.assumed = value, true
	}
	to.add(entry)
}

// holder is the part that an entry goes into: its own, or the one that it
// shares with others.
func holder(at *item, key string) *item {
	for at.merges != nil && at.merges.shares(at, key) {
		at = at.merges
	}
	return at
}

// shares reports whether a part that merges this one takes the entry from it.
func (i *item) shares(with *item, key string) bool {
	return slices.Contains(i.common, key) ||
		i.gauge == with.gauge && slices.Contains(sharedByGauge, key) ||
		i.post == with.post && slices.Contains(sharedByPost, key)
}

// mergers lists the parts that merge one.
func (s *skeleton) mergers(of *item) []*item {
	var all []*item
	var walk func(*item)
	walk = func(i *item) {
		if i.merges == of {
			all = append(all, i)
		}
		for _, c := range i.children {
			walk(c)
		}
	}
	walk(s.root)
	return all
}

// step goes to a child by key or index; nil if there is none.
func (i *item) step(step string) *item {
	if !strings.HasPrefix(step, "[") {
		return i.find(step)
	}
	var n int
	if _, err := fmt.Sscanf(step, "[%d]", &n); err != nil || n >= len(i.children) {
		return nil
	}
	return i.children[n]
}

func (s *skeleton) kindOf(id string) string {
	if c := s.root.own("components").own(id); c != nil {
		return c.own("kind").value
	}
	return ""
}

// text prints the record.
func (s *skeleton) text() []byte {
	s.root.order("", s.kindOf)
	var b strings.Builder
	for i, c := range s.root.children {
		if i > 0 && len(c.children) > 0 {
			b.WriteString("\n")
		}
		c.write(&b, "")
	}
	return []byte(b.String())
}
