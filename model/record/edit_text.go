package record

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"
)

// set gives one entry a value, in the text.
func set(name string, text []byte, c Change) ([]byte, error) {
	mark := []byte("\ufeff")
	body, marked := bytes.CutPrefix(text, mark)
	root, src, faults := parse(name, body)
	if len(faults) > 0 {
		return nil, faults
	}
	e := editor{src: src, text: body, change: c}
	out, err := e.at(root, steps(c.Path))
	if marked && err == nil {
		out = slices.Concat(mark, out)
	}
	return out, err
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
	src    *source
	text   []byte
	change Change
}

// at makes the change below a node that stands in the text itself.
func (e *editor) at(n *yaml.Node, path []string) ([]byte, error) {
	if len(path) == 0 {
		from, to := e.bounds(n)
		return e.splice(from, to, e.change.Value), nil
	}
	switch n.Kind {
	case yaml.AliasNode:
		return e.unshare(n, path)
	case yaml.SequenceNode:
		i, ok := indexOf(path[0])
		if !ok || i >= len(n.Content) {
			return nil, e.noPlace(path[0])
		}
		return e.at(n.Content[i], path[1:])
	case yaml.MappingNode:
		return e.in(n, path)
	}
	if !isNull(n) && n.Value != unknownWord {
		return nil, e.noPlace(path[0])
	}
	from, to := e.bounds(n)
	return e.splice(from, to, nested(path, e.change.Value)), nil
}

func (e *editor) noPlace(step string) error {
	return fmt.Errorf("%s: nothing in the record has a place for %q", e.change.Path, step)
}

// in makes the change in a mapping.
func (e *editor) in(m *yaml.Node, path []string) ([]byte, error) {
	for i := 0; i+1 < len(m.Content); i += 2 {
		if key := aimed(m.Content[i]); !isMerge(key) && key.Value == path[0] {
			value := m.Content[i+1]
			if _, to := e.bounds(m.Content[i]); isNull(value) && value.Value == "" {
				return e.afterColon(to, nested(path[1:], e.change.Value))
			}
			return e.at(value, path[1:])
		}
	}
	if _, ok := indexOf(path[0]); ok {
		return nil, e.noPlace(path[0])
	}
	value := nested(path[1:], e.change.Value)
	if old := inherited(m, path[0], 0); old != nil && len(path) > 1 {
		copied, err := e.rewritten(old, path[1:])
		if err != nil {
			return nil, err
		}
		value = copied
	}
	return e.insert(m, path[0]+": "+value)
}

// afterColon writes the value of a key that has none.
func (e *editor) afterColon(keyEnd int, value string) ([]byte, error) {
	colon := bytes.IndexByte(e.text[keyEnd:], ':')
	if colon < 0 {
		return e.splice(keyEnd, keyEnd, ": "+value), nil
	}
	return e.splice(keyEnd+colon+1, keyEnd+colon+1, " "+value), nil
}

// unshare replaces an alias by a mapping that merges it and differs in the
// changed key only, or by a copy of what it stands for.
func (e *editor) unshare(alias *yaml.Node, path []string) ([]byte, error) {
	from, to := e.bounds(alias)
	if alias.Alias.Kind == yaml.MappingNode && len(path) == 1 {
		return e.splice(from, to, "{<<: *"+alias.Value+", "+path[0]+": "+e.change.Value+"}"), nil
	}
	copied, err := e.rewritten(alias.Alias, path)
	if err != nil {
		return nil, err
	}
	return e.splice(from, to, copied), nil
}

// insert adds an entry to a mapping, behind its last one.
func (e *editor) insert(m *yaml.Node, entry string) ([]byte, error) {
	if m.Style&yaml.FlowStyle != 0 {
		if len(m.Content) == 0 {
			from, _ := e.bounds(m)
			return e.splice(from+1, from+1, entry), nil
		}
		_, to := e.bounds(m.Content[len(m.Content)-1])
		if isNull(m.Content[len(m.Content)-1]) {
			_, to = e.bounds(m)
			return e.splice(to-1, to-1, ", "+entry), nil
		}
		return e.splice(to, to, ", "+entry), nil
	}
	to := e.src.end(m)
	line := e.src.position(to).Line
	end := e.src.lineEnd(line)
	if e.change.Comment != "" {
		entry += "  # " + e.change.Comment
	}
	// An anchor before the first key is not part of the indentation.
	indent := strings.Repeat(" ", e.src.rangeOf(m.Content[0]).Start.Column-1)
	return e.splice(end, end, e.newline()+indent+entry), nil
}

func (e *editor) newline() string {
	if bytes.Contains(e.text, []byte("\r\n")) {
		return "\r\n"
	}
	return "\n"
}

func (e *editor) bounds(n *yaml.Node) (from, to int) {
	r := e.src.rangeOf(n)
	return e.src.offset(r.Start), e.src.offset(r.End)
}

func (e *editor) splice(from, to int, with string) []byte {
	return slices.Concat(e.text[:from], []byte(with), e.text[to:])
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
