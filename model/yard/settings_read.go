package yard

import (
	"fmt"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"github.com/gobwas/glob"

	"driploop/model/record"
	"driploop/model/verdict"
)

// Read reads the settings of a yard from the text of their file.
func Read(path string, text []byte) (*Settings, []verdict.Fault) {
	s := &Settings{Path: path, Root: filepath.Dir(path)}
	s.rule = Required()
	r := &reader{path: path}
	if len(strings.TrimSpace(string(text))) == 0 {
		return s, nil
	}
	file, faults := record.ParseYAML(path, text)
	for _, f := range faults {
		says := strings.ReplaceAll(f.Says, "a record is a mapping that begins with \"driploop: 1\"", "settings are a mapping")
		r.faults = append(r.faults, verdict.Fault{Path: path, At: f.At.Start, End: f.At.End, Says: says})
	}
	if file.Root == nil || len(faults) > 0 {
		return s, r.faults
	}
	r.file = file
	all := settings()
	keys := make([]string, len(all))
	for i := range all {
		keys[i] = all[i].key
	}
	r.each(file.Root, "settings", keys, func(key string, n node) {
		k := &all[slices.Index(keys, key)]
		k.read(r, k, n, s)
	})
	return s, r.faults
}

// reader reads settings and gathers what is wrong with them.
type reader struct {
	path   string
	file   record.YAML
	faults []verdict.Fault
}

// node is a value with its place.
type node struct {
	*record.Node
	at  verdict.Range
	key verdict.Range // of its key, in a mapping
}

func (r *reader) node(n *record.Node) node {
	return node{Node: n.Aimed(), at: r.file.RangeOf(n)}
}

func (r *reader) fault(at verdict.Range, format string, args ...any) {
	r.faults = append(r.faults, verdict.Fault{Path: r.path, At: at.Start, End: at.End, Says: fmt.Sprintf(format, args...)})
}

// each visits the keys of a mapping; it refuses those that are not known, if
// some are, and those that stand twice.
func (r *reader) each(n *record.Node, of string, known []string, visit func(key string, n node)) {
	seen := map[string]verdict.Range{}
	for k := n.First; k != nil; k = k.Next.Next {
		key, at := k.Value, r.file.RangeOf(k)
		first, twice := seen[key]
		switch {
		case twice:
			r.fault(at, "%q is here twice; the first one stands in line %d, column %d", key, first.Start.Line, first.Start.Column)
			continue
		case known != nil && !slices.Contains(known, key):
			r.fault(at, "%s have no key %q; %s", of, key, record.Choices(key, known, "they have"))
			continue
		}
		seen[key] = at
		value := r.node(k.Next)
		value.key = at
		visit(key, value)
	}
}

// mapping tells whether a value is a mapping, and what it should be if not.
func (r *reader) mapping(key string, n node, example string) bool {
	if n.Kind == record.MappingNode {
		return true
	}
	r.fault(n.at, "%q is no mapping; write it like %s", key, example)
	return false
}

func (r *reader) word(k *setting, n node) string {
	switch {
	case n.IsTagged():
		r.fault(n.at, "%q is written without a tag, such as %s", k.key, k.example)
		return ""
	case n.Kind != record.ScalarNode || n.IsNull() || n.Value == "":
		r.fault(n.at, "%q wants one word, such as %s", k.key, k.example)
		return ""
	case k.words != nil && !slices.Contains(k.words, n.Value):
		r.fault(n.at, "%q is none of the words for %q; %s", n.Value, k.key, record.Choices(n.Value, k.words, "write"))
		return ""
	}
	return n.Value
}

func (r *reader) flag(k *setting, n node) bool {
	if !n.IsBool() || n.Value != "true" && n.Value != "false" {
		r.fault(n.at, "%q is true or false, without quotes", k.key)
	}
	return n.Value == "true"
}

// items returns the items of a list; one word alone is a list of one.
func (r *reader) items(k *setting, n node) []node {
	if n.Kind != record.ListNode {
		return []node{n}
	}
	all := make([]node, 0, n.Size)
	for item := n.First; item != nil; item = item.Next {
		all = append(all, r.node(item))
	}
	if len(all) == 0 {
		r.fault(n.at, "%q is an empty list; write it like %s, or leave it out", k.key, k.example)
	}
	return all
}

func (r *reader) list(k *setting, n node) (all []string) {
	for _, item := range r.items(k, n) {
		if w := r.word(k, item); w != "" {
			all = append(all, w)
		}
	}
	return all
}

// patterns reads patterns of paths: * within a folder, ** across folders.
func (r *reader) patterns(k *setting, n node) (all []Pattern) {
	for _, item := range r.items(k, n) {
		text := r.word(k, item)
		if text == "" {
			continue
		}
		if strings.HasPrefix(text, "/") || slices.Contains(strings.Split(text, "/"), "..") {
			r.fault(item.at, "a pattern begins at the folder of this file and stays below it, such as %s", k.example)
			continue
		}
		compiled, err := compile(text)
		if err != nil {
			r.fault(item.at, "%q is no pattern of paths: %v; write * within a folder, ** across folders, ? for one letter", text, err)
			continue
		}
		all = append(all, Pattern{Text: text, At: item.at.Start, glob: compiled})
	}
	return all
}

// compile reads a pattern. "**/" at its beginning stands for no folder, too; a
// folder stands for what is in it.
func compile(text string) (all []*glob.Pattern, err error) {
	alternatives := []string{strings.TrimSuffix(text, "/")}
	if rest, ok := strings.CutPrefix(alternatives[0], "**/"); ok {
		alternatives = append(alternatives, rest)
	}
	for _, a := range alternatives {
		for _, below := range []string{"", "/**"} {
			compiled, err := glob.Compile(a+below, '/')
			if err != nil {
				return nil, err
			}
			all = append(all, compiled)
		}
	}
	return all, nil
}

func (r *reader) folders(k *setting, n node, root string) (all []Folder) {
	for _, item := range r.items(k, n) {
		text := r.word(k, item)
		switch {
		case text == "":
		case !filepath.IsLocal(text):
			r.fault(item.at, "a folder of rules stands below the folder of this file, such as %s", k.example)
		default:
			all = append(all, Folder{Path: filepath.Join(root, text), Text: text, At: item.at.Start})
		}
	}
	return all
}

// ruleID is the form of a rule's id.
var ruleID = regexp.MustCompile(`^[a-z0-9-]+/[a-z0-9-]+$`)

func (r *reader) changes(k *setting, n node) (all []Change) {
	if !r.mapping(k.key, n, k.example) {
		return nil
	}
	r.each(n.Node, k.key, nil, func(rule string, n node) {
		if !ruleID.MatchString(rule) {
			r.fault(n.key, "%q is no id of a rule; write topic/rule, such as routing/no-slack", rule)
			return
		}
		if !r.mapping(rule, n, `{to: notice, reason: "…"}`) {
			return
		}
		change := Change{Rule: rule, At: n.key.Start}
		to := setting{key: "to", words: Severities(), example: "notice"}
		given := false
		r.each(n.Node, "changes of severity", []string{"to", "reason"}, func(key string, n node) {
			if key == "reason" {
				change.Reason = strings.TrimSpace(r.word(&setting{key: key, example: `"jobs here are on trailers"`}, n))
				return
			}
			if w := r.word(&to, n); w != "" {
				change.To, _ = verdict.ParseSeverity(w)
				given = true
			}
		})
		switch {
		case !given:
			r.fault(n.at, `%s: say which severity: {to: notice, reason: "…"}`, rule)
		case change.Reason == "":
			r.fault(n.at, "%s: a change of severity wants a reason that every report can show", rule)
		default:
			all = append(all, change)
		}
	})
	return all
}

func (r *reader) documents(k *setting, n node) (all []Requirement) {
	if !r.mapping(k.key, n, k.example) {
		return nil
	}
	r.each(n.Node, "kinds of job", append([]string{AnyKind}, record.JobKinds()...), func(kind string, n node) {
		if !r.mapping(kind, n, `{entries: [sign_off.by], files: ["photos/*.jpg"]}`) {
			return
		}
		want := Requirement{Kind: kind, At: n.key.Start}
		r.each(n.Node, "required documents", []string{"entries", "files"}, func(key string, n node) {
			if key == "files" {
				want.Files = r.patterns(&setting{key: key, example: `"photos/*.jpg"`}, n)
				return
			}
			want.Entries = r.entries(n)
		})
		all = append(all, want)
	})
	return all
}

// entries reads paths of entries of a record; the format has to know them.
func (r *reader) entries(n node) (all []string) {
	k := setting{key: "entries", example: "sign_off.by"}
	for _, item := range r.items(&k, n) {
		path := r.word(&k, item)
		if path == "" {
			continue
		}
		if says := unknownEntry(path); says != "" {
			r.fault(item.at, "%s", says)
			continue
		}
		all = append(all, path)
	}
	return all
}
