package rules

import "strings"

// matchers are the functions that look for a text in another.
var matchers = map[string]func(text, part string) bool{
	"startswith": strings.HasPrefix, "endswith": strings.HasSuffix, "contains": strings.Contains,
}

// matching holds where a text has another in it, or at one end.
type matching struct {
	text, part textual
	does       string
}

func (m matching) holds(at *site) truth {
	text, known := m.text.text(at)
	part, also := m.part.text(at)
	return truthOf(known && also && matchers[m.does](text, part))
}
func (m matching) String() string { return m.does + " " + m.text.String() + " " + m.part.String() }
