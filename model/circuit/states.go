package circuit

import (
	"slices"
	"sort"
	"strings"
)

// state is which command or position each component with a choice is in, and
// which switches are open.
type state struct {
	position map[string]string // by component
	open     map[string]bool   // switches held open
	charging bool
}

// resting are the words for a position in which nothing is passed on.
var resting = []string{"off", "open", "rest", "none", "released"}

// usual are the words preferred for the position of a selector.
var usual = []string{"both", "all", "on", "closed", "combine"}

// defaultState puts each component with a choice in the position in which it
// passes most: all sources at once for a selector, else its first command.
func (n *network) defaultState() state {
	st := state{position: map[string]string{}, open: map[string]bool{}}
	for k := range n.parts {
		if p := &n.parts[k]; len(p.choices) > 0 {
			st.position[p.ID] = preferred(p.choices)
		}
	}
	return st
}

func preferred(words []string) string {
	for _, w := range usual {
		if slices.Contains(words, w) {
			return w
		}
	}
	for _, w := range words {
		if !slices.Contains(resting, w) {
			return w
		}
	}
	return words[0]
}

// with returns the state with every component that knows the word in it.
func (n *network) with(st state, word string) state {
	out := st.clone()
	for id := range out.position {
		if slices.Contains(n.part(id).choices, word) {
			out.position[id] = word
		}
	}
	return out
}

func (st state) clone() state {
	out := st
	out.position = make(map[string]string, len(st.position))
	for k, v := range st.position {
		out.position[k] = v
	}
	out.open = make(map[string]bool, len(st.open))
	for k, v := range st.open {
		out.open[k] = v
	}
	return out
}

// key names a state, the same for equal ones.
func (st state) key() string {
	if len(st.position)+len(st.open) == 0 && !st.charging {
		return ""
	}
	parts := make([]string, 0, len(st.position)+len(st.open))
	for k, v := range st.position {
		parts = append(parts, k+"="+v)
	}
	for k, v := range st.open {
		if v {
			parts = append(parts, k+"!")
		}
	}
	sort.Strings(parts)
	key := strings.Join(parts, ";")
	if st.charging {
		key += ";charging"
	}
	return key
}

// closed returns the branches that conduct in a state, loads apart.
func (n *network) closed(st state) []int {
	out := make([]int, 0, len(n.branches))
	for i := range n.branches {
		b := &n.branches[i]
		switch b.kind {
		case wire:
		case device, contact:
			if st.open[b.id] || b.when != "" && st.position[b.id] != b.when {
				continue
			}
		case source:
			if b.class == chargeClass && !st.charging {
				continue
			}
		default:
			continue
		}
		out = append(out, i)
	}
	return out
}

// words returns every command and position of the record, in its order.
func (n *network) words() []string {
	var all []string
	for k := range n.parts {
		for _, w := range n.parts[k].choices {
			if !slices.Contains(all, w) {
				all = append(all, w)
			}
		}
	}
	return all
}
