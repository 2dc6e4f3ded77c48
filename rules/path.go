package rules

import (
	"strconv"
	"strings"
)

// join adds a key to a path.
func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// entry adds the number of a list entry to a path.
func entry(path string, i int) string { return join(path, strconv.Itoa(i)) }

// cutLast takes the last key or index off a path of a record, such as
// "conductors.P1.route[0]"; it returns "" for one without.
func cutLast(path string) string {
	return path[:max(0, strings.LastIndexAny(path, ".["))]
}
