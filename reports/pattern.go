package reports

import "strings"

// keyed are the collections of a record whose second step is an id.
var keyed = [...]string{"spaces", "components", "conductors", "bundles", "penetrations"}

// patternOf replaces in the path of an entry what tells it from its like, an
// id, an index, an end, by a star, and returns that as its name: of
// "conductors.P1.route[0].support" the pattern is
// "conductors.*.route[*].support" and the name "P1.route[0]".
func patternOf(path string) (pattern, name string) {
	steps := strings.Split(path, ".")
	stars := 0 // steps from the second to the last starred one
	starred := make([]string, len(steps))
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
		stars = i
	}
	switch {
	case stars > 0:
		name = strings.Join(steps[1:stars+1], ".")
	case starred[0] != steps[0]:
		name = steps[0]
	default:
		name = path
	}
	return strings.Join(starred, "."), name
}

func isKeyed(collection string) bool {
	for _, k := range keyed {
		if k == collection {
			return true
		}
	}
	return false
}

// Pattern is the path of an entry with stars for what tells it from its like.
func Pattern(path string) string {
	pattern, _ := patternOf(path)
	return pattern
}
