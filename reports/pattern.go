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
	var pattern strings.Builder
	pattern.Grow(len(path))
	collection, _, _ := strings.Cut(path, ".")
	several := strings.Count(path, ".") > 1
	last := -1 // where the last step with a star ends
	before := ""
	for from := 0; from <= len(path); {
		step, _, more := strings.Cut(path[from:], ".")
		if from > 0 {
			pattern.WriteByte('.')
		}
		base, index, isItem := strings.Cut(step, "[")
		starred := true
		switch {
		case from > 0 && from == len(collection)+1 && several && isKeyed(collection):
			pattern.WriteByte('*')
		case isItem && strings.HasSuffix(index, "]"):
			pattern.WriteString(base)
			pattern.WriteString("[*]")
		case before == "ends" && (step == "from" || step == "to"):
			pattern.WriteByte('*')
		default:
			pattern.WriteString(step)
			starred = false
		}
		from += len(step)
		if starred {
			last = from
		}
		if !more {
			break
		}
		from++
		before = step
	}
	p := place{pattern: pattern.String()}
	switch {
	case last < 0:
		p.part = parent(path)
		p.name = p.part
	case last == len(collection):
		p.part, p.name = collection, collection
	default:
		p.part, p.name = path[:last], path[len(collection)+1:last]
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
