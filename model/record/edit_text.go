package record

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"driploop/model/record/internal/tree"
)

// splice replaces the bytes from one offset up to another.
type splice struct {
	from, to int
	with     string
}

// setAll gives entries their values, in one pass over the text as far as the
// changes do not touch the same bytes, in further passes where they do.
func setAll(name string, text []byte, changes []Change) ([]byte, error) {
	for len(changes) > 0 {
		var later []Change
		mark := []byte("\ufeff")
		body, marked := bytes.CutPrefix(text, mark)
		var nodes tree.Arena
		root, src, faults := parse(name, body, &nodes)
		if len(faults) > 0 {
			return nil, faults
		}
		var done []splice
		for _, c := range changes {
			e := editor{src: src, text: body, change: c}
			next, err := e.at(root, steps(c.Path))
			if err != nil {
				return nil, err
			}
			if slices.ContainsFunc(done, next.touches) {
				later = append(later, c)
			} else {
				done = append(done, next)
			}
		}
		text = apply(body, done)
		if marked {
			text = slices.Concat(mark, text)
		}
		changes = later
	}
	return text, nil
}

// touches reports whether two splices meet.
func (s splice) touches(other splice) bool { return s.from <= other.to && other.from <= s.to }

// apply makes splices that do not meet.
func apply(text []byte, all []splice) []byte {
	slices.SortFunc(all, func(a, b splice) int { return a.from - b.from })
	var out []byte
	at := 0
	for _, s := range all {
		out = append(append(out, text[at:s.from]...), s.with...)
		at = s.to
	}
	return append(out, text[at:]...)
}

// steps cuts a path into keys and indexes: "route[0].in" into route, [0], in.
func steps(path string) []string {
	return strings.Split(strings.ReplaceAll(path, "[", ".["), ".")
}

func indexOf(step string) (int, bool) {
	inner, ok := strings.CutPrefix(step, "[")
	if !ok {
		return 0, false
	}
	i, err := strconv.Atoi(strings.TrimSuffix(inner, "]"))
	return i, err == nil
}

// editor makes one change in a text that was parsed.
type editor struct {
	src    *tree.Source
	text   []byte
	change Change
}

// at makes the change below a node that stands in the text itself.
func (e *editor) at(n *tree.Node, path []string) (splice, error) {
	if len(path) == 0 {
		from, to := e.bounds(n)
		return splice{from, to, e.change.Value}, nil
	}
	switch n.Kind {
	case tree.Alias:
		return e.unshare(n, path)
	case tree.List:
		i, ok := indexOf(path[0])
		item := n.Child(i)
		if !ok || item == nil {
			return splice{}, e.noPlace(path[0])
		}
		return e.at(item, path[1:])
	case tree.Mapping:
		return e.in(n, path)
	}
	if !n.IsNull() && n.Value != unknownWord {
		return splice{}, e.noPlace(path[0])
	}
	from, to := e.bounds(n)
	return splice{from, to, nested(path, e.change.Value)}, nil
}

func (e *editor) noPlace(step string) error {
	return fmt.Errorf("%s: nothing in the record has a place for %q", e.change.Path, step)
}

// in makes the change in a mapping.
func (e *editor) in(m *tree.Node, path []string) (splice, error) {
	for key := m.First; key != nil; key = key.Next.Next {
		if own := key.Aimed(); !own.IsMerge() && own.Value == path[0] {
			value := key.Next
			if _, to := e.bounds(key); value.IsNull() && value.Value == "" {
				return e.afterColon(to, nested(path[1:], e.change.Value))
			}
			return e.at(value, path[1:])
		}
	}
	if _, ok := indexOf(path[0]); ok {
		return splice{}, e.noPlace(path[0])
	}
	value := nested(path[1:], e.change.Value)
	if old := inherited(m, path[0], 0); old != nil && len(path) > 1 {
		copied, err := e.rewritten(old, path[1:])
		if err != nil {
			return splice{}, err
		}
		value = copied
	}
	return e.insert(m, path[0]+": "+value)
}

// afterColon writes the value of a key that has none.
func (e *editor) afterColon(keyEnd int, value string) (splice, error) {
	colon := bytes.IndexByte(e.text[keyEnd:], ':')
	if colon < 0 {
		return splice{keyEnd, keyEnd, ": " + value}, nil
	}
	return splice{keyEnd + colon + 1, keyEnd + colon + 1, " " + value}, nil
}

// unshare replaces an alias by a mapping that merges it and differs in the
// changed key only, or by a copy of what it stands for.
func (e *editor) unshare(alias *tree.Node, path []string) (splice, error) {
	from, to := e.bounds(alias)
	if alias.Aimed().Kind == tree.Mapping && len(path) == 1 {
		return splice{from, to, "{<<: *" + alias.Value + ", " + path[0] + ": " + e.change.Value + "}"}, nil
	}
	copied, err := e.rewritten(alias.Aimed(), path)
	if err != nil {
		return splice{}, err
	}
	return splice{from, to, copied}, nil
}

// insert adds an entry to a mapping, behind its last one.
func (e *editor) insert(m *tree.Node, entry string) (splice, error) {
	if m.Style&tree.Flow != 0 {
		if m.First == nil {
			from, _ := e.bounds(m)
			return splice{from + 1, from + 1, entry}, nil
		}
		last := m.Last()
		_, to := e.bounds(last)
		if last.IsNull() {
			_, to = e.bounds(m)
			return splice{to - 1, to - 1, ", " + entry}, nil
		}
		return splice{to, to, ", " + entry}, nil
	}
	to := e.src.End(m)
	line := e.src.Position(to).Line
	end := e.src.LineEnd(line)
	if e.change.Comment != "" {
		entry += "  # " + e.change.Comment
	}
	// An anchor before the first key is not part of the indentation.
	indent := strings.Repeat(" ", e.src.RangeOf(m.First).Start.Column-1)
	return splice{end, end, e.newline() + indent + entry}, nil
}

func (e *editor) newline() string {
	if bytes.Contains(e.text, []byte("\r\n")) {
		return "\r\n"
	}
	return "\n"
}

func (e *editor) bounds(n *tree.Node) (from, to int) {
	r := e.src.RangeOf(n)
	return e.src.Offset(r.Start), e.src.Offset(r.End)
}

// nested writes a value below the keys of a path.
func nested(path []string, value string) string {
	for _, key := range slices.Backward(path) {
		if _, ok := indexOf(key); ok {
			value = "[" + value + "]"
		} else {
			value = "{" + key + ": " + value + "}"
		}
	}
	return value
}
