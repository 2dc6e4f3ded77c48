package draft

import (
	"cmp"
	"slices"
	"strings"

	"driploop/model/record"
)

// item is one entry of a record that is being written.
type item struct {
	key      string
	value    string // as YAML; empty if it has children
	comment  string
	head     string // a line above it
	anchor   string // name that others merge it by
	merges   *item
	common   []string // keys that all who merge it take from it
	gauge    string   // of a cable or an end: those of one gauge are alike in more
	post     string   // of an end: what it stands on
	children []*item
	list     bool // children are items of a list
	flow     bool // on one line
	assumed  bool // a value for trial only, to be asked for in the end
}

// leaf is an entry with a value.
func leaf(key, value string) *item { return &item{key: key, value: value} }

// proposed is a value that the program proposes and a person has to confirm.
func proposed(key, value, why string) *item {
	return &item{key: key, value: value, comment: strings.TrimSuffix("proposed: "+why, ": ")}
}

// part is an entry that holds others.
func part(key string, children ...*item) *item { return &item{key: key, children: children} }

func (i *item) add(children ...*item) *item {
	i.children = append(i.children, children...)
	return i
}

// own returns the child with the key, or nil.
func (i *item) own(key string) *item {
	for _, c := range i.children {
		if c.key == key {
			return c
		}
	}
	return nil
}

// find returns the child with the key, own or merged, or nil.
func (i *item) find(key string) *item {
	if c := i.own(key); c != nil || i.merges == nil {
		return c
	}
	return i.merges.find(key)
}

// order sorts the children of a mapping as the format lists its keys.
func (i *item) order(path string, kindOf func(string) string) {
	for _, c := range i.children {
		if !c.list && !i.list {
			c.order(join(path, c.key), kindOf)
		}
	}
	if i.list || i.flow {
		return
	}
	place := func(c *item) int {
		f, ok := record.Describe(join(path, c.key), kindOf)
		if !ok {
			return 0
		}
		return f.Order
	}
	if _, named := record.Describe(join(path, "any"), kindOf); !named || !idsBelow(path) {
		slices.SortStableFunc(i.children, func(a, b *item) int { return cmp.Compare(place(a), place(b)) })
	}
}

// idsBelow reports whether the keys at a path are ids, whose order is that of
// the writer.
func idsBelow(path string) bool {
	return slices.Contains([]string{"spaces", "components", "conductors", "penetrations"}, path) || strings.HasSuffix(path, ".posts")
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// column is where comments begin, if they can.
const column = 40

// write prints the item at an indentation.
func (i *item) write(b *strings.Builder, indent string) {
	if i.head != "" {
		b.WriteString("\n" + indent + "# " + i.head + "\n")
	}
	line := indent + i.key + ":"
	if i.anchor != "" {
		line += " &" + i.anchor
	}
	if i.flow || len(i.children) == 0 {
		line += " " + i.oneLine()
	}
	if i.comment != "" {
		line += strings.Repeat(" ", max(2, column-len(line))) + "# " + i.comment
	}
	b.WriteString(line + "\n")
	if i.flow || len(i.children) == 0 {
		return
	}
	inner := indent + "  "
	if i.merges != nil {
		b.WriteString(inner + "<<: *" + i.merges.anchor + "\n")
	}
	for _, c := range i.children {
		if !i.list {
			c.write(b, inner)
			continue
		}
		c.writeListed(b, inner)
	}
}

// writeListed prints a mapping as an item of a list.
func (i *item) writeListed(b *strings.Builder, indent string) {
	if i.flow {
		b.WriteString(indent + "- " + i.oneLine() + "\n")
		return
	}
	var body strings.Builder
	if i.anchor != "" {
		b.WriteString(indent + "- &" + i.anchor + "\n")
	}
	if i.merges != nil {
		body.WriteString(indent + "  <<: *" + i.merges.anchor + "\n")
	}
	for _, c := range i.children {
		c.write(&body, indent+"  ")
	}
	text := body.String()
	if i.anchor == "" {
		text = indent + "- " + strings.TrimPrefix(text, indent+"  ")
	}
	b.WriteString(text)
}

// oneLine prints the value, or the children in flow style.
func (i *item) oneLine() string {
	if len(i.children) == 0 && i.merges == nil {
		return i.value
	}
	if len(i.children) == 0 && i.anchor == "" {
		return "*" + i.merges.anchor
	}
	var parts []string
	if i.merges != nil {
		parts = append(parts, "<<: *"+i.merges.anchor)
	}
	for _, c := range i.children {
		parts = append(parts, c.key+": "+c.oneLine())
	}
	return "{" + strings.Join(parts, ", ") + "}"
}
