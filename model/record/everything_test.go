package record

import (
	"fmt"
	"maps"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"
)

// world holds what the examples of the tables name.
const world = `
spaces:
  battery-locker: {kind: accommodation}
  bow-locker: {kind: locker}
  foredeck: {kind: open-deck}
components:
  house: {kind: battery}
  main-fuse: {kind: fuse}
  isolator: {kind: switch}
  parallel-switch: {kind: switch}
  thruster: {kind: motor}
conductors:
  P1: {from: house.pos, to: main-fuse.line, role: positive}
  N1: {from: thruster.neg, to: house.neg, role: negative}
  P4: {from: main-fuse.load, to: isolator.in, role: positive}
  P7: {from: isolator.out, to: thruster.pos, role: positive}
  N7: {from: thruster.neg, to: house.neg, role: negative}
bundles:
  B1: {members: [P1, N1]}
penetrations:
  deck-plug: {from: bow-locker, to: foredeck}
`

// everything returns a record that holds every key on every kind, with its
// example, as a tree that tests change before they write it out.
func everything(t testing.TB) *yaml.Node {
	var doc yaml.Node
	require.NoError(t, yaml.Unmarshal([]byte(world), &doc))
	root := doc.Content[0]
	full := treeOf(t, rootTable(), -1)
	for i := 0; i < len(full.Content); i += 2 {
		key, value := full.Content[i], full.Content[i+1]
		if old := child(root, key.Value); old != nil {
			old.Content = append(old.Content, value.Content...)
		} else {
			root.Content = append(root.Content, key, value)
		}
	}
	return root
}

// treeOf makes a mapping of a table with the example of each key.
func treeOf[T any](t testing.TB, table *table[T], kind int) *yaml.Node {
	m := &yaml.Node{Kind: yaml.MappingNode}
	for i := range table.fields {
		f := &table.fields[i]
		if !f.kinds.has(kind) {
			continue
		}
		var value *yaml.Node
		switch {
		case f.key == "kind" && kind >= 0:
			value = scalar(kindTable()[kind].Name)
		case f.key == "posts":
			value = mapping(firstTerminal(kind), treeOf(t, postTable(), -1))
		case f.part != nil:
			value = f.part.(exampler).example(t)
		default:
			var doc yaml.Node
			require.NoError(t, yaml.Unmarshal([]byte(f.example), &doc))
			value = doc.Content[0]
		}
		m.Content = append(m.Content, scalar(f.key), value)
	}
	return m
}

// firstTerminal is one that a component with the examples has.
func firstTerminal(kind int) string {
	switch k := kindTable()[kind]; {
	case k.ByLinks:
		return "supply" // of the example of links
	case k.OneNode:
		return "stud-1"
	default:
		return k.Terminals[0]
	}
}

// exampler makes an example of what a key holds below it.
type exampler interface{ example(t testing.TB) *yaml.Node }

func (p single[P]) example(t testing.TB) *yaml.Node { return treeOf(t, p.of(), -1) }

func (p several[P]) example(t testing.TB) *yaml.Node {
	return &yaml.Node{Kind: yaml.SequenceNode, Content: []*yaml.Node{treeOf(t, p.of(), -1)}}
}

func (p byID[P]) example(t testing.TB) *yaml.Node {
	table := p.of()
	if table.kind == nil {
		return mapping("all", treeOf(t, table, -1))
	}
	all := &yaml.Node{Kind: yaml.MappingNode}
	for i, k := range kindTable() {
		all.Content = append(all.Content, scalar("all-"+k.Name), treeOf(t, table, i))
	}
	return all
}

func mapping(key string, value *yaml.Node) *yaml.Node {
	return &yaml.Node{Kind: yaml.MappingNode, Content: []*yaml.Node{scalar(key), value}}
}

func scalar(value string) *yaml.Node { return &yaml.Node{Kind: yaml.ScalarNode, Value: value} }

func child(m *yaml.Node, key string) *yaml.Node {
	for i := 0; i+1 < len(m.Content); i += 2 {
		if m.Content[i].Value == key {
			return m.Content[i+1]
		}
	}
	return nil
}

func write(t testing.TB, root *yaml.Node) []byte {
	text, err := yaml.Marshal(root)
	require.NoError(t, err)
	return text
}

// leaf is one value of a tree, with its path.
type leaf struct {
	path   string
	parent *yaml.Node
	at     int // index in the parent's content
}

// leaves returns every value below a node, mappings and lists included.
func leaves(n *yaml.Node, path string) []leaf {
	all := make([]leaf, 0, len(n.Content))
	for i, c := range n.Content {
		var here string
		switch {
		case n.Kind == yaml.SequenceNode:
			here = index(path, i)
		case i%2 == 1:
			here = join(path, n.Content[i-1].Value)
		default:
			continue
		}
		all = append(all, leaf{here, n, i})
		all = append(all, leaves(c, here)...)
	}
	return all
}

// distinct returns the record that holds everything without the components that
// carry nothing new, and its leaves, each field of a component once.
func distinct(t testing.TB) (*yaml.Node, []leaf) {
	root := everything(t)
	components := child(root, "components")
	seen := map[string]bool{}
	var kept []*yaml.Node
	for i := 0; i < len(components.Content); i += 2 {
		id, fresh := components.Content[i].Value, false
		for _, l := range leaves(components.Content[i+1], "") {
			fresh = fresh || !seen[l.path]
			seen[l.path] = true
		}
		if fresh || !strings.HasPrefix(id, "all-") {
			kept = append(kept, components.Content[i:i+2]...)
		}
	}
	components.Content = kept

	var once []leaf
	clear(seen)
	for _, l := range leaves(root, "") {
		field := l.path
		if parts := strings.SplitN(l.path, ".", 3); len(parts) == 3 && parts[0] == "components" {
			field = "components." + parts[2]
		}
		if !seen[field] {
			seen[field] = true
			once = append(once, l)
		}
	}
	return root, once
}

func TestEveryKeyIsReadWithItsExample(t *testing.T) {
	r, faults := Decode("all.yaml", write(t, everything(t)))
	require.Empty(t, faults, faults.Error())
	stands := maps.Collect(r.Places.All())
	for _, key := range conductorTable().keys {
		assert.Contains(t, stands, "conductors.all."+key)
	}
	for _, key := range endTable().keys {
		assert.Contains(t, stands, "conductors.all.ends.to."+key)
	}
	for i, k := range kindTable() {
		for _, key := range componentTable().keysFor(i) {
			assert.Contains(t, stands, "components.all-"+k.Name+"."+key)
		}
	}
}

// The types and the tables are two lists of the same things.
func TestEveryFieldOfTheTypesHasAKey(t *testing.T) {
	r, faults := Decode("all.yaml", write(t, everything(t)))
	require.Empty(t, faults, faults.Error())
	given := map[string]bool{}
	for _, v := range values(r) {
		given[v.field] = given[v.field] || v.state == Given
	}
	assert.Greater(t, len(given), 250)
	for field, is := range given {
		assert.True(t, is, "no key fills %s", field)
	}
}

func TestAnyValueMayBeUnknownButThese(t *testing.T) {
	// Without these there is no record, or no circuit, or nothing to point at.
	certain := []string{
		"driploop", "job", "vessel", "practice", "practice[0]", "practice[1]",
		"spaces", "components", "conductors", "bundles", "penetrations", "cases", "tests", "waivers",
		"components.house.kind", "conductors.P1.from", "conductors.P1.to",
		"conductors.P1.role", "conductors.N1.role", "conductors.P4.role", "conductors.P7.role", "conductors.N7.role", "conductors.all.role",
		"components.all-switch.links", "components.all-switch.links[0].between", "components.all-switch.links[0].between[1]",
		"components.all-switch.links[0].when",
		"components.all-relay.coils", "components.all-relay.coils[0].between", "components.all-relay.coils[0].between[1]",
		"components.all-relay.coils[0].when",
		"waivers[0].rule", "waivers[0].at",
		// Whole entries of a list or of a mapping by id: each of their values may.
		"components.all-switch.links[0]", "components.all-relay.coils[0]", "components.all-fuse.curve_points", "components.all-fuse.curve_points[0]", "conductors.all.route[0]", "tests[0]", "waivers[0]",
		"components.all-battery.posts.pos",
	}
	root, all := distinct(t)
	var refused []string
	known := 0
	for _, l := range all {
		if isEntry(l.path) || strings.HasSuffix(l.path, "].between[0]") {
			continue
		}
		old := l.parent.Content[l.at]
		l.parent.Content[l.at] = scalar("unknown")
		r, faults := Decode("u.yaml", write(t, root))
		switch {
		case len(faults) > 0:
			refused = append(refused, l.path)
		case !strings.HasSuffix(l.path, ".posts") && !strings.HasSuffix(l.path, ".route"): // which leave nothing to mark
			known++
			assertUnknown(t, r, l.path)
		}
		l.parent.Content[l.at] = old
	}
	assert.ElementsMatch(t, certain, refused)
	assert.Greater(t, known, 250)
}

// isEntry tells paths of whole conductors and the like, which are names first,
// and repeats of an entry that another path stands for.
func isEntry(path string) bool {
	parts := strings.Split(path, ".")
	switch {
	case len(parts) == 2 && strings.HasSuffix(parts[0], "s"):
		return true
	case len(parts) == 3 && parts[0] == "conductors" && parts[1] != "P1" && (parts[2] == "from" || parts[2] == "to"):
		return true
	}
	return len(parts) == 4 && parts[2] == "posts" && parts[3] != "pos"
}

// assertUnknown checks that a value below the path is marked.
func assertUnknown(t *testing.T, r *Record, path string) {
	t.Helper()
	place, ok := r.Places.Find(path)
	require.True(t, ok, path)
	for _, v := range values(r) {
		if v.state == Unknown && v.at.Start.Line >= place.Start.Line && v.at.Start.Line <= place.End.Line+1 {
			return
		}
	}
	assert.Fail(t, "nothing is marked unknown", path)
}

func TestLeavingOutAnyOptionalValueIsNoFault(t *testing.T) {
	root, all := distinct(t)
	for _, l := range all {
		if l.parent.Kind != yaml.MappingNode || l.parent.Content[l.at].Kind != yaml.ScalarNode {
			continue
		}
		old := l.parent.Content
		l.parent.Content = append(append([]*yaml.Node{}, old[:l.at-1]...), old[l.at+1:]...)
		_, faults := Decode("r.yaml", write(t, root))
		last := l.path[strings.LastIndexByte(l.path, '.')+1:]
		for _, f := range faults {
			assert.Contains(t, f.Says, fmt.Sprintf("has no %q", last), "without %s", l.path)
		}
		l.parent.Content = old
	}
}
