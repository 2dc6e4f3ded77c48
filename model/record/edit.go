package record

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"
)

// Change gives one entry of a record a value.
type Change struct {
	Path    string // such as conductors.P1.route[0].support
	Value   string // as YAML, on one line
	Comment string // put behind an entry that is added on a line of its own; may be empty
}

// ErrShared says that an entry cannot be changed alone.
type ErrShared struct {
	Path string // to be changed
	With string // would change with it
}

func (e *ErrShared) Error() string {
	return fmt.Sprintf("%s is shared with %s by an anchor; write one of them out", e.Path, e.With)
}

// Edit makes changes in the text of a record. All else stays byte for byte:
// comments, order, spelling. An entry that others take over by alias or merge
// key is changed for itself alone: the others get their old value written out,
// or, where they had none, the error is an *ErrShared.
func Edit(name string, text []byte, changes ...Change) ([]byte, error) {
	before, err := Leaves(name, text)
	if err != nil {
		return nil, err
	}
	if text, err = setAll(name, text, changes); err != nil {
		return nil, err
	}
	const rounds = 4 // each writes one level of sharing out
	for range rounds {
		after, err := Leaves(name, text)
		if err != nil {
			return nil, err
		}
		strays := strays(before, after, changes)
		if len(strays) == 0 {
			if err := taken(after, changes); err != nil {
				return nil, err
			}
			return text, nil
		}
		var back []Change
		for _, path := range strays {
			path = whole(path)
			old, had := said(before, path)
			if !had {
				return nil, &ErrShared{changes[0].Path, path}
			}
			if !slices.ContainsFunc(back, func(c Change) bool { return c.Path == path }) {
				back = append(back, Change{Path: path, Value: old})
			}
		}
		if text, err = setAll(name, text, back); err != nil {
			return nil, err
		}
	}
	return nil, &ErrShared{changes[0].Path, "other entries"}
}

// taken makes sure that plain values stand where they were meant to.
func taken(after map[string]string, changes []Change) error {
	for _, c := range changes {
		want := parsed(c.Value)
		if want.Kind == yaml.ScalarNode && after[c.Path] != strings.TrimPrefix(want.Tag, "!!")+" "+want.Value {
			return fmt.Errorf("%s cannot be changed in this layout; write it by hand", c.Path)
		}
	}
	return nil
}

// strays lists, sorted, the paths whose value changed without being meant.
func strays(before, after map[string]string, changes []Change) []string {
	meant := func(path string) bool {
		return slices.ContainsFunc(changes, func(c Change) bool {
			return Within(path, c.Path) || strings.HasPrefix(c.Path, path+".")
		})
	}
	changed := map[string]bool{}
	for path, value := range before {
		if after[path] != value && !meant(path) {
			changed[path] = true
		}
	}
	for path := range after {
		if _, had := before[path]; !had && !meant(path) {
			changed[path] = true
		}
	}
	return slices.Sorted(maps.Keys(changed))
}

// whole is the path of the list that an item of plain values stands in, or the
// path itself.
func whole(path string) string {
	if strings.HasSuffix(path, "]") {
		return path[:strings.LastIndexByte(path, '[')]
	}
	return path
}

// said writes what stood at a path, a value or a list of values, as YAML.
func said(before map[string]string, path string) (string, bool) {
	if old, had := before[path]; had {
		return spell(old), true
	}
	var items []string
	for {
		old, had := before[index(path, len(items))]
		if !had {
			return "[" + strings.Join(items, ", ") + "]", len(items) > 0
		}
		items = append(items, spell(old))
	}
}
