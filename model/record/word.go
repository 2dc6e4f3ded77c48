package record

import (
	"slices"
	"sync"
)

// word is a key of the format by its number in the vocabulary. Of a key of a record
// the number is looked up once; what follows compares numbers.
type word uint16

// unheard is the number of what is no key of the format.
const unheard word = 0

// maxWords bounds the vocabulary.
const maxWords = 512

// lexicon numbers words.
type lexicon struct {
	texts []string // by number; "" is that of unheard
	slots []word   // by hash, unheard where a slot is free; a power of two
}

// vocabulary holds all keys of the format.
var vocabulary = sync.OnceValue(func() *lexicon {
	texts := []string{""}
	rootTable().words(&texts)
	slices.Sort(texts)
	texts = slices.Compact(texts)
	if len(texts) > maxWords {
		panic("record: the format has more keys than maxWords")
	}
	l := &lexicon{texts: texts, slots: make([]word, 4*maxWords)}
	for i, text := range texts[1:] {
		l.slots[l.slot(text)] = word(i + 1)
	}
	return l
})

// number returns the number of a word.
func (l *lexicon) number(text string) word {
	if text == "" {
		return unheard
	}
	return l.slots[l.slot(text)]
}

// slot is the slot of a text that is not empty, or the free one in which it would be.
func (l *lexicon) slot(text string) int {
	n := len(text)
	mask := len(l.slots) - 1
	for i := 97*n + 31*int(text[0]) + 7*int(text[n/2]) + 3*int(text[n-1]); ; i++ {
		if at := l.slots[i&mask]; at == unheard || l.texts[at] == text {
			return i & mask
		}
	}
}

func (t *table[T]) words(into *[]string) {
	*into = append(*into, t.keys...)
	for i := range t.fields {
		if p := t.fields[i].part; p != nil {
			p.words(into)
		}
	}
}

func (p single[P]) words(into *[]string)  { p.of().words(into) }
func (p several[P]) words(into *[]string) { p.of().words(into) }
func (p byID[P]) words(into *[]string)    { p.of().words(into) }

// wordSet is a set of keys.
type wordSet struct {
	heard   [maxWords / 64]uint64
	unheard keySet
}

func (s *wordSet) clear() {
	s.heard = [maxWords / 64]uint64{}
	s.unheard.clear()
}

// add reports whether a key is new; the text is that of the word.
func (s *wordSet) add(w word, text string) bool {
	if w == unheard {
		return s.unheard.add(text)
	}
	in, bit := &s.heard[w/64], uint64(1)<<(w%64)
	added := *in&bit == 0
	*in |= bit
	return added
}
