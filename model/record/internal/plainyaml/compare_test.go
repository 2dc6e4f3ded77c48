package plainyaml

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"go.yaml.in/yaml/v3"
)

// reference returns what yaml.v3 makes of a text that holds one document.
func reference(text []byte) (doc *yaml.Node, err error) {
	defer func() {
		if p := recover(); p != nil {
			doc, err = nil, fmt.Errorf("panic: %v", p)
		}
	}()
	decoder := yaml.NewDecoder(bytes.NewReader(text))
	var first, second yaml.Node
	if err := decoder.Decode(&first); err != nil {
		return nil, err
	}
	if err := decoder.Decode(&second); !errors.Is(err, io.EOF) {
		return nil, fmt.Errorf("a second document, or: %w", err)
	}
	return &first, nil
}

// differs says what is different between what Parse and yaml.v3 make of a text;
// "" if nothing is, or if Parse hands the text on.
func differs(text []byte) string {
	got := Parse(bytes.Clone(text))
	if got == nil {
		return ""
	}
	want, err := reference(text)
	if err != nil {
		return "taken, and yaml.v3 says: " + err.Error()
	}
	c := comparison{}
	c.compare("", got, want)
	return c.says
}

type comparison struct {
	says string
	met  map[*yaml.Node]*yaml.Node // of aliases: by a node of ours that of yaml.v3
}

func (c *comparison) compare(path string, got, want *yaml.Node) {
	if c.met == nil {
		c.met = map[*yaml.Node]*yaml.Node{}
	}
	c.met[got] = want
	a, b := *got, *want
	b.HeadComment, b.LineComment, b.FootComment = "", "", ""
	a.Content, b.Content, a.Alias, b.Alias = nil, nil, nil, nil
	if printed, other := fmt.Sprintf("%#v", a), fmt.Sprintf("%#v", b); printed != other {
		c.say(path, printed, other)
	}
	if (got.Alias == nil) != (want.Alias == nil) || got.Alias != nil && c.met[got.Alias] != want.Alias {
		c.say(path, "alias of another node", "")
	}
	if len(got.Content) != len(want.Content) || cap(got.Content) != len(got.Content) {
		c.say(path, fmt.Sprint(len(got.Content), " children"), fmt.Sprint(len(want.Content)))
		return
	}
	for i := range got.Content {
		c.compare(fmt.Sprintf("%s/%d", path, i), got.Content[i], want.Content[i])
	}
}

func (c *comparison) say(path, got, want string) {
	if c.says == "" {
		c.says = fmt.Sprintf("%s: %s, and yaml.v3: %s", path, got, want)
	}
}
