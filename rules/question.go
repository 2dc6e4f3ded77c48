package rules

import (
	"slices"
	"sync"
)

// question is a condition as the sieve asks it. The forms that most conditions have
// are held in little room and point nowhere: the questions of all rules are gone
// over for every record, and do not stay in the processor's cache meanwhile.
type question struct {
	shape shape
	is    relation // of a limit
	spot  spot     // of the fact, of the forms about one
	value float64  // of a limit
	words []string // of a member

	of [][]ordinal // the alternatives of either and neither
	condition
}

// ordinal is the number of a question among those about a collection.
type ordinal int32

type shape uint8

const (
	anyShape     shape = iota // asked of one subject after the other
	aroundShape               // about the vessel and the job alone: the same for all
	presentShape              // present, and so on
	limitShape
	memberShape
	anyOfShape
	noneOfShape
)

// answer is what a question finds of some subjects: those for which it holds, and
// those for which it may hold. Of the latter that are not among the former only OPA
// can tell.
type answer struct{ yes, may some }

// questions are those about a collection. Rules are read when a record calls for
// them, so that there come to be more; none ever changes.
type questions struct {
	sync.Mutex
	all     []question
	numbers map[string]ordinal // by what they say
}

// list returns the questions that there are by now.
func (q *questions) list() []question {
	q.Lock()
	defer q.Unlock()
	return q.all
}

// add adds a question, unless one that says the same is there.
func (q *questions) add(one question, says string) ordinal {
	q.Lock()
	defer q.Unlock()
	n, there := q.numbers[says]
	if !there {
		n = ordinal(len(q.all)) //nolint:gosec // far fewer
		q.all = append(q.all, one)
		if says != "" {
			q.numbers[says] = n
		}
	}
	return n
}

// questionsOf returns conditions that hold together as questions.
func (c *collection) questionsOf(when []condition) []ordinal {
	all := make([]ordinal, len(when))
	for i, one := range when {
		all[i] = c.question(one)
	}
	return all
}

func (c *collection) question(one condition) ordinal {
	q := question{condition: one}
	switch one := one.(type) {
	case anyOf:
		q.shape, q.of = anyOfShape, c.alternatives(one)
	case noneOf:
		q.shape, q.of = noneOfShape, c.alternatives(one)
	case present:
		q.shape, q.spot = presentShape, one.fact.spot
	case limit:
		q.shape, q.spot, q.is, q.value = limitShape, one.fact.spot, one.is, one.of.is.v
	case member:
		q.shape, q.spot, q.words = memberShape, one.fact.spot, one.words
	}
	read, told := reads(one)
	if !told {
		return c.questions.add(q, "")
	}
	if !slices.ContainsFunc(read, func(o *operand) bool { return o.single == nil }) {
		q.shape = aroundShape
	}
	return c.questions.add(q, one.String())
}

func (c *collection) alternatives(of [][]condition) [][]ordinal {
	all := make([][]ordinal, len(of))
	for i, when := range of {
		all[i] = c.questionsOf(when)
	}
	return all
}

// reads returns the facts that a condition reads. It returns false for one that is
// not told by its text from those of other rules.
func reads(c condition) (facts []*operand, told bool) {
	told = true
	read := func(of any) {
		more, plain := readBy(of)
		facts, told = append(facts, more...), told && plain
	}
	readAll := func(alternatives [][]condition) {
		for _, c := range slices.Concat(alternatives...) {
			more, plain := reads(c)
			facts, told = append(facts, more...), told && plain
		}
	}
	switch c := c.(type) {
	case present:
		read(c.fact)
	case limit:
		read(c.fact)
	case member:
		read(c.fact)
	case comparison:
		read(c.a)
		read(c.b)
	case wording:
		read(c.a)
		read(c.b)
	case matching:
		read(c.text)
		read(c.part)
	case holding:
		read(c.list)
		read(c.word)
	case anyOf:
		readAll(c)
	case noneOf:
		readAll(c)
	default:
		return nil, false
	}
	return facts, told
}

// readBy returns the facts that one side of a condition reads.
func readBy(v any) (facts []*operand, told bool) {
	switch v := v.(type) {
	case *operand:
		return []*operand{v}, true
	case word, literal:
		return nil, true
	case calculation:
		a, told := readBy(v.a)
		b, also := readBy(v.b)
		return append(a, b...), told && also
	}
	return nil, false
}
