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

// shared lists what all cables of a job usually have in common, and all their
// ends, and all that runs through a space: filled in once.
var (
	sharedByCables = []string{"insulation", "compound", "wet", "oil_resistant", "material", "class", "tinned", "standard", "labelled"}
	sharedByEnds   = []string{"terminal", "soldered", "plating", "metal", "slack", "damaged_strands", "broken_strands", "washer_in_path", "nut", "crimp", "cover"}
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
	at := s.root
	for _, step := range steps[:len(steps)-1] {
		next := at.step(step)
		if next == nil {
			next = part(step)
			s.holder(at, step).add(next)
		}
		at = next
	}
	key := steps[len(steps)-1]
	holder := s.holder(at, key)
	if holder.find(key) != nil {
		return false
	}
	s.put(holder, key, f)
	if holder == at && at.anchor != "" && !sharedHere(at, s, key) {
		// Others merge this part: each has to say for itself what is not shared.
		for _, other := range s.mergers(at) {
			if other.own(key) == nil {
				s.put(other, key, f)
			}
		}
	}
	return true
}

func (s *skeleton) put(holder *item, key string, f record.Field) {
	says := strings.TrimSuffix(f.Says, ".")
	switch {
	case len(f.Words) > 0 && len(f.Words) <= 6:
		says += ": " + strings.Join(f.Words, ", ")
	case f.Example != "" && f.Example != "true":
		says += ", such as " + f.Example
	}
	entry := &item{key: key, value: unknown, comment: says}
	if value := s.trialValue(holder, key); s.trial && value != "" {
		entry.value, entry.assumed = value, true
	}
	holder.add(entry)
}

// holder is the part that an entry goes into: its own, or the one that it
// shares with others.
func (s *skeleton) holder(at *item, key string) *item {
	if at.merges != nil && sharedHere(at.merges, s, key) {
		return at.merges
	}
	return at
}

// sharedHere reports whether the parts that merge this one share the key.
func sharedHere(at *item, s *skeleton, key string) bool {
	switch at {
	case s.cable:
		return slices.Contains(sharedByCables, key)
	case s.end:
		return slices.Contains(sharedByEnds, key)
	}
	for _, spot := range s.spots {
		if at == spot {
			return slices.Contains(sharedInSpace, key)
		}
	}
	return false
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
