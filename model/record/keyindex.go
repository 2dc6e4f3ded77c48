package record

import "iter"

// keyIndex finds the fields of a key: several times for each value of a record, so
// it is a hash of its own, made for a few short and known words.
type keyIndex struct{ slots []keySlot }

type keySlot struct {
	key    string // "" if the slot is free
	fields []int
}

// newKeyIndex makes an index of keys and their fields; of a key that comes again
// the fields are added. There are size different keys.
func newKeyIndex(size int, keys iter.Seq2[string, int]) keyIndex {
	slots := 4
	for slots < 4*size {
		slots *= 2
	}
	x := keyIndex{make([]keySlot, slots)}
	for key, field := range keys {
		s := x.slot(key)
		s.key, s.fields = key, append(s.fields, field)
	}
	return x
}

// of returns the fields of a key, none if it has none.
func (x keyIndex) of(key string) []int {
	if key == "" {
		return nil
	}
	return x.slot(key).fields
}

// slot is the slot of a key, or the free one in which it would be.
func (x keyIndex) slot(key string) *keySlot {
	n := len(key)
	for i := 31*n + 7*int(key[0]) + 3*int(key[n/2]) + int(key[n-1]); ; i++ {
		if s := &x.slots[i&(len(x.slots)-1)]; s.key == key || s.key == "" {
			return s
		}
	}
}
