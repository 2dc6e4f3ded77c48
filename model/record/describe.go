package record

import (
	"slices"
	"strings"
)

// Field is what the format says of one key of a record.
type Field struct {
	Key      string
	Says     string   // what the value is, one line
	Example  string   // one that a record could hold, as YAML; empty for a part
	Words    []string // the only words allowed, if any
	Order    int      // place among the keys of its mapping
	Required bool
	Part     bool // a mapping or a list of its own
}

// Hint is a comment on an entry that is to be filled in: what it is, and the
// words or an example of what may stand there.
func (f Field) Hint() string {
	const few = 6 // words that a line holds
	says := strings.TrimSuffix(f.Says, ".")
	switch {
	case len(f.Words) > 0 && len(f.Words) <= few:
		return says + ": " + strings.Join(f.Words, ", ")
	case f.Example != "" && f.Example != "true":
		return says + ", such as " + f.Example
	}
	return says
}

// Describe returns what the format says of the entry at a path, such as
// conductors.P1.route[0].support. What a component may carry depends on its
// kind, which kindOf tells from its id; with no kind, every key is known. The
// second result is false if the format has no such entry.
func Describe(path string, kindOf func(id string) string) (Field, bool) {
	var kind string
	if id, ok := strings.CutPrefix(path, "components."); ok {
		id, _, _ = strings.Cut(id, ".")
		kind = kindOf(id)
	}
	s, order := rootTable().describe(steps(path), kindIndex(kind))
	if s == nil {
		return Field{}, false
	}
	return Field{
		Key: s.key, Says: s.says, Example: s.example, Words: slices.Clone(s.words), Order: order, Required: s.required, Part: s.part != nil,
	}, true
}

// describe finds the spec at the steps of a path, and its place in its mapping.
func (t *table[T]) describe(path []string, kind int) (*spec, int) {
	if len(path) == 0 || t.named(path[0], -1) == nil {
		return nil, 0
	}
	of := kind
	if t.kind == nil {
		of = -1 // only the keys of a component depend on its kind
	}
	f := t.named(path[0], of)
	switch {
	case f == nil:
		return nil, 0
	case len(path) == 1:
		return &f.spec, slices.Index(t.keys, f.key)
	case f.part == nil:
		return nil, 0
	}
	return f.part.describe(path[1:], kind)
}

func (p single[P]) describe(path []string, kind int) (*spec, int) { return p.of().describe(path, kind) }

func (p several[P]) describe(path []string, kind int) (*spec, int) {
	if _, ok := indexOf(path[0]); !ok {
		return nil, 0
	}
	return p.of().describe(path[1:], kind)
}

func (p byID[P]) describe(path []string, kind int) (*spec, int) {
	return p.of().describe(path[1:], kind)
}

// KeysAt lists the keys of the mapping at a path, in the order of the format; of
// a component those that its kind may carry.
func KeysAt(path string, kindOf func(id string) string) []Field {
	var at []string
	if path != "" {
		at = steps(path)
	}
	var fields []Field
	for _, key := range rootTable().keysAt(at) {
		if f, ok := Describe(join(path, key), kindOf); ok {
			fields = append(fields, f)
		}
	}
	return fields
}

func (t *table[T]) keysAt(path []string) []string {
	if len(path) == 0 {
		return t.keys
	}
	f := t.named(path[0], -1)
	if f == nil || f.part == nil {
		return nil
	}
	return f.part.keysAt(path[1:])
}

func (p single[P]) keysAt(path []string) []string { return p.of().keysAt(path) }

func (p several[P]) keysAt(path []string) []string {
	if len(path) == 0 {
		return nil // items have numbers
	}
	return p.of().keysAt(path[1:])
}

func (p byID[P]) keysAt(path []string) []string {
	if len(path) == 0 {
		return nil // ids are the writer's
	}
	return p.of().keysAt(path[1:])
}
