package rules

import "slices"

// few is how many alternatives are tried one by one without more ado.
const few = 3

// hoisted puts what many alternatives have in common in front: conditions that
// all of them hold, and that a fact is known which all of them compare. A table
// that is unrolled row by row is then left at once where its fact is missing.
func hoisted(alternatives [][]condition) (common []condition, rest [][]condition) {
	if len(alternatives) < few {
		return nil, alternatives
	}
	shared := map[string]int{}
	for _, when := range alternatives {
		for _, text := range distinct(when) {
			shared[text]++
		}
	}
	inAll := func(c condition) bool { return shared[c.String()] == len(alternatives) }
	first := alternatives[0]
	for _, o := range compared(first) {
		known := present{o}
		if slices.IndexFunc(alternatives, func(when []condition) bool { return !slices.Contains(compared(when), o) }) < 0 && !inAll(known) {
			common = append(common, known)
		}
	}
	for _, c := range first {
		if inAll(c) {
			common = append(common, c)
		}
	}
	rest = make([][]condition, len(alternatives))
	for i, when := range alternatives {
		for _, c := range when {
			if !inAll(c) {
				rest[i] = append(rest[i], c)
			}
		}
	}
	return common, rest
}

// distinct writes conditions, each once.
func distinct(when []condition) []string {
	var texts []string
	for _, c := range when {
		if text := c.String(); !slices.Contains(texts, text) {
			texts = append(texts, text)
		}
	}
	return texts
}

// compared returns the facts that have to be known for conditions to hold.
func compared(when []condition) []*operand {
	var facts []*operand
	add := func(x any) {
		if o, ok := x.(*operand); ok && o.optional && !slices.Contains(facts, o) {
			facts = append(facts, o)
		}
	}
	for _, c := range when {
		switch c := c.(type) {
		case limit:
			add(c.fact)
		case comparison:
			add(c.a)
			add(c.b)
		case wording:
			add(c.a)
			add(c.b)
		case member:
			add(c.fact)
		}
	}
	return facts
}
