package record

import "strings"

// PartOf is the part of a record that a path lies in: conductors.P1 of
// conductors.P1.ends.from.
func PartOf(path string) string {
	steps := strings.SplitN(path, ".", 3)
	return strings.Join(steps[:min(2, len(steps))], ".")
}

// Within reports whether a path is that of an entry, or of one in it.
func Within(path, entry string) bool {
	rest, ok := strings.CutPrefix(path, entry)
	return ok && (rest == "" || rest[0] == '.' || rest[0] == '[')
}
