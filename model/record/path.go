package record

import (
	"strconv"
	"strings"
)

// firstStep cuts the first step off a path, and tells whether there are more. A
// step that no path has is "".
func firstStep(path string) (step, rest string, more bool) {
	end := 0
	for end < len(path) && path[end] != '.' && (path[end] != '[' || end == 0) {
		end++
	}
	switch {
	case end == len(path):
		return path, "", false
	case path[end] == '[':
		return path[:end], path[end:], true
	case end+1 < len(path) && path[end+1] == '[':
		return "", "", false // an index has no dot before it
	}
	return path[:end], path[end+1:], true
}

// lastStep cuts the last step off a path.
func lastStep(path string) (above, step string) {
	switch i := strings.LastIndexAny(path, ".["); {
	case i < 0:
		return "", path
	case path[i] == '[':
		return path[:i], path[i:]
	default:
		return path[:i], path[i+1:]
	}
}

// under is the path of a step under a path.
func under(path, step string) string {
	if path == "" || strings.HasPrefix(step, "[") {
		return path + step
	}
	return path + "." + step
}

// itemStep is the step of an item of a list.
func itemStep(i int) string {
	const few = "[0][1][2][3][4][5][6][7][8][9]"
	if i < len(few)/len("[0]") {
		return few[3*i : 3*i+3]
	}
	return "[" + strconv.Itoa(i) + "]"
}

// paths makes the paths of parts, some of which share an allocation.
type paths struct{ all strings.Builder }

// pathsAtOnce is the room for paths that is made at once, in bytes: little, since
// whoever keeps one of them keeps all.
const pathsAtOnce = 1 << 10

// under is the path of a step under a path.
func (p *paths) under(path, step string) string {
	if path == "" {
		return step
	}
	if size := len(path) + 1 + len(step); p.all.Cap()-p.all.Len() < size {
		p.all.Reset() // what was written stays as it is
		p.all.Grow(max(size, pathsAtOnce))
	}
	from := p.all.Len()
	p.all.WriteString(path)
	if !strings.HasPrefix(step, "[") {
		p.all.WriteByte('.')
	}
	p.all.WriteString(step)
	return p.all.String()[from:]
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

func index(path string, i int) string { return path + itemStep(i) }
