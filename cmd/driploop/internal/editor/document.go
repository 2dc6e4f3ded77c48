package editor

import (
	"net/url"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"driploop/model/circuit"
	"driploop/model/record"
	"driploop/model/verdict"
)

// document is one text as an editor has it.
type document struct {
	uri     string
	version int
	text    string
	lines   []string

	once     sync.Once
	record   *record.Record
	faults   record.Faults
	analysis *circuit.Analysis
	verdicts *verdict.Record // nil until judged, or if it cannot be
	judging  sync.Mutex
	ready    atomic.Bool // it was read and solved
	good     *document   // the last text before this one that was
}

func newDocument(uri string, version int, text string) *document {
	return &document{uri: uri, version: version, text: text, lines: linesOf(text)}
}

// name is what messages call the file.
func (d *document) name() string { return path.Base(d.uri) }

// path is where the file lies; of a text that is no file, its name.
func (d *document) path() string {
	u, err := url.Parse(d.uri)
	if err != nil || u.Scheme != "file" {
		return d.name()
	}
	return filepath.FromSlash(u.Path)
}

// solve reads and solves the record, once.
func (d *document) solve() {
	d.once.Do(func() {
		d.record, d.faults = record.Decode(d.name(), []byte(d.text))
		if len(d.faults) == 0 {
			d.analysis = circuit.Analyse(d.record)
			d.ready.Store(true)
		}
	})
}

// settled is the newest text that was read and solved, this one or one before, as
// far as that is known without waiting; nil if there is none.
func (d *document) settled() *document {
	if d.ready.Load() {
		return d
	}
	return d.good
}

// lastGood is settled, where nothing was read yet after reading this text.
func (d *document) lastGood() *document {
	if g := d.settled(); g != nil {
		return g
	}
	d.solve()
	return d.settled()
}

// known is the record as far as it is known while a line is half typed.
func (d *document) known() *record.Record {
	if g := d.lastGood(); g != nil {
		return g.record
	}
	return d.record
}

// entryAt is the path of the entry that a position stands on, with the range of
// its key. Entries that an anchor shares are told by the first that has them.
func (d *document) entryAt(p position) (string, verdict.Range, bool) {
	at := recordPosition(d.lines, p)
	var best string
	var place verdict.Range
	for path, r := range d.known().Places.All() {
		if after(r.Start, at) || r.Start.Line != at.Line {
			continue
		}
		if best == "" || after(r.Start, place.Start) || r.Start == place.Start && (len(path) < len(best) || len(path) == len(best) && path < best) {
			best, place = path, r
		}
	}
	return best, place, best != ""
}

func after(a, b verdict.Position) bool {
	return a.Line > b.Line || a.Line == b.Line && a.Column > b.Column
}

// wordAt is the id or terminal that a position stands in, such as house.pos.
func (d *document) wordAt(p position) (string, textRange) {
	if p.Line >= len(d.lines) {
		return "", textRange{}
	}
	line := d.lines[p.Line]
	at := offsetIn(line, p.Character)
	isWord := func(c byte) bool {
		return c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '-' || c == '_' || c == '.' || c >= 0x80
	}
	from, to := at, at
	for from > 0 && isWord(line[from-1]) {
		from--
	}
	for to < len(line) && isWord(line[to]) {
		to++
	}
	return line[from:to], textRange{position{p.Line, from}, position{p.Line, to}}
}

// named finds the entry that an id names: a component, conductor, space, bundle
// or penetration.
func (d *document) named(word string) (string, bool) {
	r := d.known()
	if r == nil || word == "" {
		return "", false
	}
	id, _, _ := strings.Cut(word, ".")
	sections := []string{"components", "conductors", "spaces", "bundles", "penetrations", "cases"}
	if slices.Contains(sections, id) { // a subject written out, as in a waiver
		id = record.PartOf(word)
		_, ok := r.Places.Find(id)
		return id, ok
	}
	for _, section := range sections {
		if _, ok := r.Places.Find(section + "." + id); ok {
			return section + "." + id, true
		}
	}
	return "", false
}
