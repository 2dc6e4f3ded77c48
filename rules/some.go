package rules

import (
	"iter"
	"math/bits"
)

// some is a set of subjects of one collection, by their place among at most a
// batch of them.
type some uint64

// batch is how many subjects are judged at once.
const batch = 64

// first returns the first n subjects.
func first(n int) some { return 1<<n - 1 }

// count returns how many there are.
func (s some) count() int { return bits.OnesCount64(uint64(s)) }

// lowest returns the first place at which there is one.
func (s some) lowest() int { return bits.TrailingZeros64(uint64(s)) }

// each goes over the places of the subjects.
func (s some) each() iter.Seq[int] {
	return func(yield func(int) bool) {
		for rest := uint64(s); rest != 0; rest &= rest - 1 {
			if !yield(bits.TrailingZeros64(rest)) {
				return
			}
		}
	}
}

// each goes over the numbers of the practice sets.
func (m mask) each() iter.Seq[int] {
	return func(yield func(int) bool) {
		for rest := uint32(m); rest != 0; rest &= rest - 1 {
			if !yield(bits.TrailingZeros32(rest)) {
				return
			}
		}
	}
}

// bySet is a set of subjects for each practice set of a rule.
type bySet [32]some

// of returns the subjects of any of some practice sets.
func (b *bySet) of(sets mask) (all some) {
	for set := range sets.each() {
		all |= b[set]
	}
	return all
}

// sets returns the practice sets that one subject is with.
func (b *bySet) sets(subject int, among mask) (sets mask) {
	for set := range among.each() {
		sets |= mask(b[set]>>subject&1) << set
	}
	return sets
}
