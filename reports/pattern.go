package reports

import "strings"

// keyed are the collections of a record whose second step is an id.
var keyed = [...]string{"spaces", "components", "conductors", "bundles", "penetrations", "cases"}

// place is the path of an entry taken apart.
type place struct {
	// pattern is the path with stars for what tells it from its like: an id, an
	// index, an end. Of "conductors.P1.route[0].support" it is
	// "conductors.*.route[*].support".
	pattern string
	// part is the path down to the last of those, "conductors.P1.route[0]", or
	// of the section that holds the entry.
	part string
	// name is the part without its collection: "P1.route[0]".
	name string
}

func placeOf(path string) place {
	steps := strings.Split(path, ".")
	starred := make([]string, len(steps))
	last := -1 // the last step with a star
	for i, step := range steps {
		starred[i] = step
		base, index, isItem := strings.Cut(step, "[")
		switch {
		case i == 1 && len(steps) > 2 && isKeyed(steps[0]):
			starred[i] = "*"
		case isItem && strings.HasSuffix(index, "]"):
			starred[i] = base + "[*]"
		case i > 0 && steps[i-1] == "ends" && (step == "from" || step == "to"):
			starred[i] = "*"
		default:
			continue
		}
		last = i
	}
	p := place{pattern: strings.Join(starred, ".")}
	switch {
	case last < 0:
		p.part = parent(path)
		p.name = p.part
	case last == 0:
		p.part, p.name = steps[0], steps[0]
	default:
		p.part, p.name = strings.Join(steps[:last+1], "."), strings.Join(steps[1:last+1], ".")
	}
	return p
}

// Pattern is the path of an entry with stars for what tells it from its like.
func Pattern(path string) string { return placeOf(path).pattern }

// parent is the path one step up: of "a.b[2]" it is "a.b", of "a" nothing.
func parent(path string) string {
	return path[:max(strings.LastIndexAny(path, ".["), 0)]
}

func isKeyed(collection string) bool {
	for _, k := range keyed {
		if k == collection {
			return true
		}
	}
	return false
}
