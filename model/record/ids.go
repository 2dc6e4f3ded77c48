package record

import "driploop/model/record/internal/tree"

// idSet finds an id that stands in a mapping twice.
type idSet struct {
	pairs []keyed
	many  map[string]*tree.Node // the keys that were met, if there are many
}

func idsOf(pairs []keyed) idSet {
	const few = 16 // are faster gone through
	s := idSet{pairs: pairs}
	if len(pairs) > few {
		s.many = make(map[string]*tree.Node, len(pairs))
	}
	return s
}

// first returns the key before a pair that is the same id as its own; nil if there
// is none. Pairs are asked for in turn.
func (s *idSet) first(i int, id string) *tree.Node {
	if s.many != nil {
		first := s.many[id]
		if first == nil {
			s.many[id] = s.pairs[i].key
		}
		return first
	}
	for _, p := range s.pairs[:i] {
		if key := p.key.Aimed(); key.Value == id && isWord(key) {
			return p.key
		}
	}
	return nil
}
