package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"os"
	"slices"
	"strings"
	"time"

	"driploop/model/verdict"
	"driploop/model/yard"
	"driploop/reports"
	"driploop/rules"
)

// memory is what was judged before: the cache, and what all keys have in common.
// Of a record there are two entries. One holds its verdicts, and its name is made
// of the text and all that they rest on. The other holds what is printed of it, or
// what is wrong with it, and its name is made of the path, too, of whether
// that was named, since only then a file has to be a record, and of how it is
// printed.
type memory struct {
	cache    *yard.Cache
	all      bool // every verdict is kept, not only those that are listed
	day      string
	verdicts yard.Key
	printed  yard.Key
	prints   bool // what is printed hangs on nothing else
}

// openMemory opens the cache. Without one, all is judged; that is no fault.
func (c *checking) openMemory(e *rules.Engine, o reports.Options) {
	f := c.flags
	if f.noCache || c.whole {
		return
	}
	var err error
	if c.memory.cache, err = yard.OpenCache(f.cache, int64(f.cacheMiB)<<20); err != nil {
		if f.cache != "" {
			complain(c.errs, err.Error()+"; all is judged anew")
		}
		return
	}
	c.memory.all = c.listsMet()
	c.memory.day = c.today.Format(time.DateOnly)
	c.memory.verdicts = yard.KeyOf(build(), e.Digest(), fmt.Sprint(c.memory.all),
		strings.Join(c.practice.sets, " "), strings.Join(c.practice.also, " "), c.settings.Asked())
	c.memory.printed = yard.KeyOf(string(c.memory.verdicts[:]), f.format.value, string(o.Units), fmt.Sprint(o.Colour, o.Width),
		c.settings.Path, fmt.Sprint(c.settings.Severity))
	c.memory.prints = slices.Contains([]string{"text", "json"}, f.format.value) && // of which a record's text is all
		c.earlier == nil && !c.inPrint() && !c.settings.AsksForFiles()
}

// build identifies the program: a development build by its file.
func build() string {
	name := version()
	if path, err := os.Executable(); err == nil {
		if info, err := os.Stat(path); err == nil {
			name += fmt.Sprintf(" %d %d", info.Size(), info.ModTime().UnixNano())
		}
	}
	return name
}

// verdictsOf is the name of the entry of a record's verdicts.
func (m *memory) verdictsOf(text []byte) (key yard.Key) {
	if m.cache == nil {
		return key
	}
	sum := sha256.Sum256(text)
	return yard.KeyOf(string(m.verdicts[:]), string(sum[:]))
}

// The first byte of an entry of verdicts.
const (
	undated = 0
	dated   = 1 // they hang on the day
)

// recall returns what was judged of a text before, by the name of its entry.
func (c *checking) recall(key yard.Key, path string, text []byte) (out result, ok bool) {
	if c.memory.cache == nil {
		return out, false
	}
	body, ok := c.memory.cache.Get(key, c.memory.day)
	if !ok || len(body) == 0 {
		return out, false
	}
	kept, ok := yard.Unpack(body[1:], c.rule)
	if !ok {
		return out, false
	}
	sum := sha256.Sum256(text)
	kept.Record.Path, kept.Record.SHA256 = path, hex.EncodeToString(sum[:])
	return result{verdicts: kept.Record, source: reports.NewSource(text, kept.Find), judged: true, dated: body[0] == dated}, true
}

// remember keeps what was judged of a text.
func (c *checking) remember(key yard.Key, out *result) {
	if c.memory.cache == nil || !out.judged || len(out.faults) > 0 {
		return
	}
	kept := yard.Keep(&out.verdicts, out.source.Find, c.memory.all)
	first := byte(undated)
	if out.dated {
		first = dated
	}
	c.memory.cache.Put(key, c.dayOf(out), append([]byte{first}, yard.Pack(&kept)...))
}

// dayOf is the day that a result hangs on; empty for any.
func (c *checking) dayOf(r *result) string {
	if r.dated {
		return c.memory.day
	}
	return ""
}

// printed is what is kept of how a file was printed: the tally of a record, which
// its text follows, or what is wrong with it.
type printed struct {
	Tally  *tally          `json:"tally,omitempty"`
	Faults []verdict.Fault `json:"faults,omitempty"`
	Lines  map[int]string  `json:"lines,omitempty"` // that faults show
}

// recallPrinted returns what was printed of a file before, and the name of the
// entry that holds it.
func (c *checking) recallPrinted(f yard.File, text []byte) (key yard.Key, out result, ok bool) {
	if c.memory.cache == nil || !c.memory.prints {
		return key, out, false
	}
	sum := sha256.Sum256(text)
	key = yard.KeyOf(string(c.memory.printed[:]), f.Path, fmt.Sprint(f.Named), string(sum[:]))
	body, ok := c.memory.cache.Get(key, c.memory.day)
	if !ok {
		return key, out, false
	}
	head, text, ok := bytes.Cut(body, []byte{'\n'})
	var p printed
	if !ok || json.Unmarshal(head, &p) != nil {
		return key, out, false
	}
	if p.Tally == nil {
		return key, result{faults: p.Faults, source: reports.SourceOf(p.Lines)}, len(p.Faults) > 0
	}
	return key, result{judged: true, tally: *p.Tally, rendered: &reports.Chunk{Text: text, Counts: p.Tally.Counts}}, true
}

// keep keeps what is printed of a file.
func (c *checking) keep(key yard.Key, r *result) {
	if c.memory.cache == nil || !c.memory.prints || r.failed != nil || r.runaway != nil {
		return
	}
	var p printed
	var text []byte
	switch {
	case r.judged && len(r.faults) == 0 && r.rendered != nil:
		p.Tally, text = &r.tally, r.rendered.Text
	case !r.judged && len(r.faults) > 0 && r.source != nil:
		p.Faults, p.Lines = r.faults, r.source.FewLines()
	default:
		return
	}
	head, err := json.Marshal(p)
	if err == nil {
		c.memory.cache.Put(key, c.dayOf(r), append(append(head, '\n'), text...))
	}
}

// rule finds a rule by its id, or nil.
func (c *checking) rule(id string) *verdict.Rule {
	if id == yard.RequiredID {
		return c.settings.RequiredRule()
	}
	e, err := c.engine()
	if err != nil {
		return nil
	}
	r, err := e.Rule(id)
	if err != nil {
		return nil
	}
	return r
}
