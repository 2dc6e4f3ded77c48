package record

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"

	"go.yaml.in/yaml/v3"

	"driploop/model/verdict"
)

// Decode reads a record from the text of a file; the name is for messages.
//
// It returns all faults of the file, in the order of their places. A record
// with faults is filled as far as it could be read, for editors; it must not be
// judged.
func Decode(name string, text []byte) (*Record, Faults) {
	sum := sha256.Sum256(text)
	r := &Record{Name: name, SHA256: hex.EncodeToString(sum[:])}
	doc, src, faults := parse(name, text)
	if doc == nil {
		return r, faults
	}
	d := &decoder{name: name, src: src, faults: faults, r: r}
	top := verdict.Position{Line: 1, Column: 1}
	start := verdict.Range{Start: top, End: top}
	rootTable().decode(d, start, start, doc, spot{number: root}, "", r)
	if r.Practice.State == Absent {
		r.Practice.V, r.Practice.State = DefaultPractice(), Given
	}
	r.Places = Places{all: d.places}
	r.Places.index()
	d.check()
	return r, d.faults.sorted()
}

// decoder carries the state of one decoding.
type decoder struct {
	name    string
	src     *source
	r       *Record
	faults  Faults
	refs    []reference
	places  []place
	repeats repeats
	taken   keySet // keys of the mapping that is being merged
	muted   bool

	depth    int // of aliases that are being followed
	expanded int // keys and items met through aliases
	stopped  bool
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

// place keeps where a step under a place stands, and returns its number.
func (d *decoder) place(under int32, step string, at verdict.Range) int32 {
	d.places = append(d.places, place{step, under, extentOf(at)})
	return int32(len(d.places) - 1)
}

// follow returns the node that an alias stands for, or the node itself, and
// what to call when done with it.
func (d *decoder) follow(n *yaml.Node) (*yaml.Node, func()) {
	if n.Kind != yaml.AliasNode {
		return n, func() {}
	}
	d.depth++
	return n.Alias, d.leave
}

func (d *decoder) leave() { d.depth-- }

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
func (d *decoder) word(n *yaml.Node) (string, bool) {
	if n.Kind == yaml.AliasNode {
		n = n.Alias
	}
	return n.Value, n.Kind == yaml.ScalarNode && !isNull(n)
}

// id reads a key that names a part of the record.
func (d *decoder) id(n *yaml.Node, at verdict.Range, what string) (string, bool) {
	id, ok := d.word(n)
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
