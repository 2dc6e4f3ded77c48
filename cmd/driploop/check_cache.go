package main

import (
	"crypto/sha256"
	"encoding/hex"
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
type memory struct {
	cache *yard.Cache
	all   bool // every verdict is kept, not only those that are listed
	base  yard.Key
}

// remember opens the cache. Without one, all is judged; that is no fault.
func (c *checking) remember(e *rules.Engine) {
	f := c.flags
	if f.noCache || c.whole || !slices.Contains([]string{"text", "json"}, f.format.value) {
		return // other formats look up places that are not kept
	}
	var err error
	if c.memory.cache, err = yard.OpenCache(f.cache); err != nil {
		if f.cache != "" {
			complain(c.errs, err.Error()+"; all is judged anew")
		}
		return
	}
	c.memory.all = f.all
	c.memory.base = yard.KeyOf(build(), e.Digest(), c.today.Format(time.DateOnly), fmt.Sprint(f.all),
		strings.Join(c.practice.sets, " "), strings.Join(c.practice.also, " "), c.settings.Asked())
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

// recall returns what was judged of a text before.
func (c *checking) recall(key yard.Key, path string, text []byte) (out result, ok bool) {
	body, ok := c.memory.cache.Get(key)
	if !ok {
		return out, false
	}
	kept, ok := yard.Unpack(body, c.rule)
	if !ok {
		return out, false
	}
	sum := sha256.Sum256(text)
	kept.Record.Path, kept.Record.SHA256 = path, hex.EncodeToString(sum[:])
	return result{verdicts: kept.Record, source: reports.NewSource(text, kept.Places), judged: true}, true
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
