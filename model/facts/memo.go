package facts

import (
	"driploop/model/figure"
	"driploop/model/physics"
	"driploop/model/quantity"
	"driploop/model/record"
)

// memo remembers what was found out about a few keys, since a job repeats the
// same few texts at every joint.
type memo[K comparable, V any] struct {
	held [remembers]struct {
		key   K
		value V
	}
	n int
}

// remembers is for how many keys that is; what comes after them is found out each
// time.
const remembers = 16

// of returns what find says of a key.
func (m *memo[K, V]) of(key K, find func(K) V) *V {
	for i := range m.held[:m.n] {
		if m.held[i].key == key {
			return &m.held[i].value
		}
	}
	if m.n == remembers {
		value := find(key)
		return &value
	}
	one := &m.held[m.n]
	m.n++
	one.key, one.value = key, find(key)
	return &one.value
}

// findings are the memos of a document.
type findings struct {
	studs    memo[string, studSize]
	barrels  memo[string, barrelSize]
	ranges   memo[[2]string, string]
	markings memo[string, promise]
	faces    memo[[2]string, faced]
}

// studSize is the nominal size that a text names, if it does.
type studSize struct {
	size  string
	known bool
}

func readStud(text string) studSize {
	size, ok := record.NominalStud(text)
	return studSize{size, ok}
}

// barrelSize is the size that a mark on a barrel names, if it does.
type barrelSize struct {
	quantity.WireSize
	known bool
}

func readBarrel(text string) barrelSize {
	size, err := quantity.ParseWireSize(text)
	return barrelSize{size, err == nil}
}

func readRange(sizes [2]string) string { return sizes[0] + " to " + sizes[1] }

// faced is two metals that touch, and how far they are apart.
type faced struct {
	said string
	gap  figure.Figure
}

func readFaces(metals [2]string) faced {
	return faced{metals[0] + " on " + metals[1], physics.AnodicGap(metals[0], metals[1])}
}
