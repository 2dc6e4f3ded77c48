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
	d.name, d.r, d.words = name, r, vocabulary()
	var doc *tree.Node
	if doc, d.src, d.faults = parse(name, text, &d.nodes); doc == nil {
		return r, d.faults
	}
	d.places.begin()
	rootTable().decode(d, start(), doc, spot{part: root}, "", r)
	if r.Practice.State == Absent {
		r.Practice.V, r.Practice.State = DefaultPractice(), Given
	}
	r.Places = d.places.placed()
	d.check()
	return r, d.faults.sorted()
}

// decoder carries the state of one decoding.
type decoder struct {
	name    string
	words   *lexicon
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
	places  placing
	paths   paths
	repeats repeats
	pairs   []keyed // of the mappings that are being read
	items   []item  // of the list that is being read
	taken   wordSet // keys of the mapping that is being merged
	// bringing holds the keys of mappings that others merge.
	bringing map[*tree.Node][]keyed
}

// forget makes a decoder ready for another record. What a hostile file made large is
// given back.
func (d *decoder) forget() {
	kept := d.scratch
	if len(kept.bringing) > most {
		kept.bringing = nil
	}
	clear(kept.bringing)
	kept.nodes.Forget()
	kept.repeats.forget()
	kept.taken.unheard.forget()
	kept.refs, kept.pairs = emptied(kept.refs), emptied(kept.pairs[:cap(kept.pairs)])
	kept.items = emptied(kept.items[:cap(kept.items)])
	kept.places = placing{parts: emptied(kept.places.parts)}
	kept.paths = paths{}
	*d = decoder{scratch: kept}
}

// most is how many values a list may have room for that is kept: those of a large
// record.
const most = 1 << 16

// emptied is a list without its values, if its room is not too large to be kept.
func emptied[T any](list []T) []T {
	if cap(list) > most {
		return nil
	}
	clear(list)
	return list[:0]
}

// maxExpanded bounds what aliases and merge keys expand to.
const maxExpanded = 250_000

// start stands for the record as a whole, at the start of the file.
func start() *tree.Node {
	return &tree.Node{At: tree.Extent{Line: 1, Column: 1, EndLine: 1, EndColumn: 1}}
}

// fault reports what is wrong with a node.
func (d *decoder) fault(at *tree.Node, format string, args ...any) {
	d.faultIn(d.src.RangeOf(at), format, args...)
}

// faultIn reports what is wrong in a range.
func (d *decoder) faultIn(at verdict.Range, format string, args ...any) {
	switch {
	case d.muted || d.stopped:
	case len(d.faults) >= maxFaults:
		d.stopped = true
		d.faults = append(d.faults, Fault{d.name, at, fmt.Sprintf("more than %d faults: the rest of the file was not read", maxFaults)})
	default:
		d.faults = append(d.faults, Fault{d.name, at, fmt.Sprintf(format, args...)})
	}
}

// spot is where in the record the decoder is: the number and the path of a part. In
// a single value it is that of the part which the value belongs to, without path.
type spot struct {
	part int32
	path string
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

// extent returns the range of a node.
func (d *decoder) extent(n *tree.Node) tree.Extent {
	if !n.Located() {
		d.src.Locate(n)
	}
	return n.At
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
		d.fault(start(), "aliases and merge keys expand to more than %d entries; write them out or use fewer", maxExpanded)
		d.stopped = true
	}
}

// id reads a key that names a part of the record.
func (d *decoder) id(n *tree.Node, what string) (string, bool) {
	key := n.Aimed()
	id, ok := key.Value, isWord(key)
	switch {
	case !ok:
		d.fault(n, "the id of a %s is a plain word; here stands %s", what, noun(n))
	case !plainID(id):
		d.fault(n, "%q is no id of a %s; use %s", clip(id), what, idHelp)
		ok = false
	case id == unknownWord || id == noneWord:
		d.fault(n, "%q cannot be an id: it stands for a value; give this %s another one", id, what)
		ok = false
	case len(id) > maxID:
		d.fault(n, "this id of a %s has %d characters; use at most %d", what, len(id), maxID)
		ok = false
	}
	return id, ok
}
