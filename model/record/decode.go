package record

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"sync"

	"driploop/model/record/internal/tree"
	"driploop/model/verdict"
)

// Decode reads a record from the text of a file; the name is for messages.
//
// It returns all faults of the file, in the order of their places. A record
// with faults is filled as far as it could be read, for editors; it must not be
// judged.
func Decode(name string, text []byte) (*Record, Faults) {
	d := decoders.Get().(*decoder)
	r, faults := d.decode(name, text)
	d.forget()
	decoders.Put(d)
	return r, faults
}

// decoders are used again: a record keeps nothing of one.
var decoders = sync.Pool{New: func() any { return &decoder{} }}

func (d *decoder) decode(name string, text []byte) (*Record, Faults) {
	sum := sha256.Sum256(text)
	r := &Record{Name: name, SHA256: hex.EncodeToString(sum[:])}
	d.name, d.r = name, r
	var doc *tree.Node
	if doc, d.src, d.faults = parse(name, text, &d.nodes); doc == nil {
		return r, d.faults
	}
	top := verdict.Position{Line: 1, Column: 1}
	start := verdict.Range{Start: top, End: top}
	rootTable().decode(d, start, start, doc, spot{number: root}, "", r)
	if r.Practice.State == Absent {
		r.Practice.V, r.Practice.State = DefaultPractice(), Given
	}
	r.Places = placesOf(d.places)
	d.check()
	return r, d.faults.sorted()
}

// decoder carries the state of one decoding.
type decoder struct {
	name    string
	src     *tree.Source
	r       *Record
	faults  Faults
	muted   bool
	stopped bool

	depth    int // of aliases that are being followed
	expanded int // keys and items met through aliases

	scratch
}

// scratch is what a decoder uses again for the next record.
type scratch struct {
	nodes   tree.Arena
	refs    []reference
	places  []place
	repeats repeats
	pairs   []keyed // of the mappings that are being read
	taken   keySet  // keys of the mapping that is being merged
}

// forget makes a decoder ready for another record. What a hostile file made large is
// given back.
func (d *decoder) forget() {
	kept := d.scratch
	kept.nodes.Forget()
	kept.repeats.forget()
	kept.taken.forget()
	kept.refs, kept.places, kept.pairs = emptied(kept.refs), emptied(kept.places), emptied(kept.pairs[:cap(kept.pairs)])
	*d = decoder{scratch: kept}
}

// emptied is a list without its values, if its room is not too large to be kept.
func emptied[T any](list []T) []T {
	const most = 1 << 16 // values of a large record
	if cap(list) > most {
		return nil
	}
	clear(list)
	return list[:0]
}

// maxExpanded bounds what aliases and merge keys expand to.
const maxExpanded = 250_000

func (d *decoder) fault(at verdict.Range, format string, args ...any) {
	switch {
	case d.muted || d.stopped:
	case len(d.faults) >= maxFaults:
		d.stopped = true
		d.faults = append(d.faults, Fault{d.name, at, fmt.Sprintf("more than %d faults: the rest of the file was not read", maxFaults)})
	default:
		d.faults = append(d.faults, Fault{d.name, at, fmt.Sprintf(format, args...)})
	}
}

// spot is where in the record the decoder is: the path of a part, "" for a single
// value, and the number of its place.
type spot struct {
	path   string
	number int32
}

// join is the path of a part within another.
func (d *decoder) join(path, key string) string { return join(path, key) }

// place keeps where a step under a place stands, and returns its number.
func (d *decoder) place(under int32, step string, at verdict.Range) int32 {
	d.places = append(d.places, place{step, under, tree.Of(at)})
	return int32(len(d.places) - 1)
}

// enter returns the node that an alias stands for, or the node itself; leave ends
// what it began.
func (d *decoder) enter(n *tree.Node) *tree.Node {
	if n.Kind == tree.Alias {
		d.depth++
	}
	return n.Aimed()
}

func (d *decoder) leave(n *tree.Node) {
	if n.Kind == tree.Alias {
		d.depth--
	}
}

// spend accounts for one more key or item and reports whether to go on.
func (d *decoder) spend() bool {
	if d.depth > 0 && !d.stopped {
		d.expand(1)
	}
	return !d.stopped
}

func (d *decoder) expand(n int) {
	if d.expanded += n; d.expanded > maxExpanded && !d.stopped {
		top := verdict.Position{Line: 1, Column: 1}
		d.fault(verdict.Range{Start: top, End: top}, "aliases and merge keys expand to more than %d entries; write them out or use fewer", maxExpanded)
		d.stopped = true
	}
}

// word returns the text of a key.
func word(n *tree.Node) (string, bool) {
	n = n.Aimed()
	return n.Value, n.Kind == tree.Scalar && n.Tag != tree.Null
}

// id reads a key that names a part of the record.
func (d *decoder) id(n *tree.Node, at verdict.Range, what string) (string, bool) {
	id, ok := word(n)
	switch {
	case !ok:
		d.fault(at, "the id of a %s is a plain word; here stands %s", what, noun(n))
	case !plainID(id):
		d.fault(at, "%q is no id of a %s; use %s", clip(id), what, idHelp)
		ok = false
	case id == unknownWord || id == noneWord:
		d.fault(at, "%q cannot be an id: it stands for a value; give this %s another one", id, what)
		ok = false
	case len(id) > maxID:
		d.fault(at, "this id of a %s has %d characters; use at most %d", what, len(id), maxID)
		ok = false
	}
	return id, ok
}
