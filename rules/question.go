package rules

import (
	"sync"
)

// question is a condition that is asked of many subjects at once.
type question struct {
	condition
	// number is that of the question among those of the collection; none if no other
	// rule can ask the same.
	number int
	around bool // it is about the vessel and the job alone
	// of are the alternatives of anyOf and, with inverted, of noneOf.
	of       [][]question
	inverted bool
}

// none is the number of a question that is not remembered.
const none = -1

// answer is what a question finds of some subjects: those for which it holds, and
// those for which it may hold. Of the latter that are not among the former only OPA
// can tell.
type answer struct{ yes, may some }

// questions numbers the questions about a collection, by what they say. Rules are
// read when a record calls for them, so that it grows.
type questions struct {
	sync.Mutex
	numbers map[string]int
}

func (q *questions) number(says string) int {
	q.Lock()
	defer q.Unlock()
	n, known := q.numbers[says]
	if !known {
		n = len(q.numbers)
		q.numbers[says] = n
	}
	return n
}

// questionsOf returns conditions that hold together as questions.
func (c *collection) questionsOf(when []condition) []question {
	all := make([]question, len(when))
	for i, one := range when {
		all[i] = c.question(one)
	}
	return all
}

func (c *collection) question(one condition) question {
	q := question{condition: one, number: none}
	switch one := one.(type) {
	case anyOf:
		q.of = c.alternatives(one)
		return q
	case noneOf:
		q.of, q.inverted = c.alternatives(one), true
		return q
	}
	if read, told := reads(one); told {
		q.number = c.questions.number(one.String())
		q.around = true
		for _, fact := range read {
			q.around = q.around && fact.single != nil
		}
	}
	return q
}

func (c *collection) alternatives(of [][]condition) [][]question {
	all := make([][]question, len(of))
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
		more, known := readBy(of)
		facts, told = append(facts, more...), told && known
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
