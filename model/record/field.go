package record

import "driploop/model/quantity"

// spec is what the format says of one key. The same specs drive decoding, the
// advice in messages and the JSON Schema.
type spec struct {
	key     string
	says    string // what the value is, one line
	example string // one that a record could hold, as YAML

	shape shape
	dim   quantity.Dimension
	words []string // the only words allowed, if any
	form  *form    // how the text has to look, if it matters
	refs  target   // what the text has to name, if anything
	kinds kindSet  // kinds of component that carry it; 0 means all

	required bool
	certain  bool // "unknown" is refused: without it there is no circuit
	signed   bool // may be negative
	zero     bool // may be zero
	part     part // of a mapping or a list
}

// shape is the shape of a value in the file.
type shape uint8

const (
	textShape shape = iota
	flagShape
	countShape
	measureShape
	wireShape
	dateShape
	wordsShape
	spanShape
	barrelShape   // one or two conductor sizes
	terminalShape // component.terminal
	pairShape     // two terminals of one component
	versionShape
	partShape
	listShape // of mappings
	mapShape  // of mappings by id
)

// target is what a text has to name.
type target uint8

const (
	nothing target = iota
	toSpace
	toComponent
	toLoad
	toSwitch
	toConductor
	toBundle
	toPenetration
	toCommand // the "when" of a link or coil
	toSubject // any part of the record by its path
)

// field is a spec with the place of its value in a T.
type field[T any] struct {
	spec
	at func(*T) any // pointer to the value
}

func text[T any](key, says, example string, at func(*T) *Text) field[T] {
	return field[T]{spec{key: key, says: says, example: example}, func(t *T) any { return at(t) }}
}

func flag[T any](key, says string, at func(*T) *Flag) field[T] {
	return field[T]{spec{key: key, says: says, example: "true", shape: flagShape}, func(t *T) any { return at(t) }}
}

func count[T any](key, says, example string, at func(*T) *Count) field[T] {
	return field[T]{spec{key: key, says: says, example: example, shape: countShape}, func(t *T) any { return at(t) }}
}

func measure[T any](key string, d quantity.Dimension, says, example string, at func(*T) *Measure) field[T] {
	return field[T]{spec{key: key, says: says, example: example, shape: measureShape, dim: d}, func(t *T) any { return at(t) }}
}

func wire[T any](key, says, example string, at func(*T) *Wire) field[T] {
	return field[T]{spec{key: key, says: says, example: example, shape: wireShape}, func(t *T) any { return at(t) }}
}

func date[T any](key, says, example string, at func(*T) *Date) field[T] {
	return field[T]{spec{key: key, says: says, example: example, shape: dateShape}, func(t *T) any { return at(t) }}
}

func words[T any](key, says, example string, at func(*T) *Words) field[T] {
	return field[T]{spec{key: key, says: says, example: example, shape: wordsShape}, func(t *T) any { return at(t) }}
}

func barrel[T any](key, says, example string, at func(*T) *Words) field[T] {
	return field[T]{spec{key: key, says: says, example: example, shape: barrelShape}, func(t *T) any { return at(t) }}
}

func span[T any](key string, d quantity.Dimension, says, example string, at func(*T) *Span) field[T] {
	return field[T]{spec{key: key, says: says, example: example, shape: spanShape, dim: d}, func(t *T) any { return at(t) }}
}

func terminal[T any](key, says, example string, at func(*T) *Terminal) field[T] {
	f := field[T]{spec{key: key, says: says, example: example, shape: terminalShape}, func(t *T) any { return at(t) }}
	return f.must().sure()
}

func pair[T any](key, says, example string, at func(*T) *[]string) field[T] {
	f := field[T]{spec{key: key, says: says, example: example, shape: pairShape}, func(t *T) any { return at(t) }}
	return f.must().sure()
}

// one is a mapping within a mapping.
func one[T, P any](key, says string, of func() *table[P], at func(*T) *P) field[T] {
	return field[T]{spec{key: key, says: says, shape: partShape, part: single[P]{of}}, func(t *T) any { return at(t) }}
}

// list is a list of mappings.
func list[T, P any](key, says string, of func() *table[P], at func(*T) *[]*P) field[T] {
	return field[T]{spec{key: key, says: says, shape: listShape, part: several[P]{of}}, func(t *T) any { return at(t) }}
}

// named is a mapping of mappings by id, of which one is given as an example.
func named[T, P any](key, says, id string, of func() *table[P], at func(*T) *[]*P) field[T] {
	return field[T]{spec{key: key, says: says, example: id, shape: mapShape, part: byID[P]{of}}, func(t *T) any { return at(t) }}
}

// of closes the list of words.
func (f field[T]) of(words ...string) field[T] { f.words = words; return f }

// like sets how the text has to look.
func (f field[T]) like(form *form) field[T] { f.form = form; return f }

// to sets what the text has to name.
func (f field[T]) to(t target) field[T] { f.refs = t; return f }

// must makes the key required.
func (f field[T]) must() field[T] { f.required = true; return f }

// sure refuses "unknown".
func (f field[T]) sure() field[T] { f.certain = true; return f }

// orZero allows zero.
func (f field[T]) orZero() field[T] { f.zero = true; return f }

// orNegative allows any sign.
func (f field[T]) orNegative() field[T] { f.zero, f.signed = true, true; return f }

// on limits fields to kinds of component.
func on[T any](kinds kindSet, fields ...field[T]) []field[T] {
	for i := range fields {
		fields[i].kinds = kinds
	}
	return fields
}
