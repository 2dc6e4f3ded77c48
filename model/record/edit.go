package record

import (
	"fmt"
	"maps"
	"slices"
	"strings"
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
	for _, c := range changes {
		if text, err = set(name, text, c); err != nil {
			return nil, err
		}
	}
	const rounds = 4 // each writes one level of sharing out
	for range rounds {
		after, err := Leaves(name, text)
		if err != nil {
			return nil, err
		}
		strays := strays(before, after, changes)
		if len(strays) == 0 {
			return text, nil
		}
		for _, path := range strays {
			old, had := before[path]
			if !had {
				return nil, &ErrShared{changes[0].Path, path}
			}
			if text, err = set(name, text, Change{Path: path, Value: spell(old)}); err != nil {
				return nil, err
			}
		}
	}
	return nil, &ErrShared{changes[0].Path, "other entries"}
}

// strays lists, sorted, the paths whose value changed without being meant.
func strays(before, after map[string]string, changes []Change) []string {
	meant := func(path string) bool {
		return slices.ContainsFunc(changes, func(c Change) bool {
			return path == c.Path || strings.HasPrefix(path, c.Path+".") || strings.HasPrefix(path, c.Path+"[") || strings.HasPrefix(c.Path, path+".")
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
