package record

import (
	"regexp"
	"strings"
	"sync"
)

// form is how a text has to look. The pattern goes into the JSON Schema as it
// stands, so it keeps to what Go and ECMAScript both read.
type form struct {
	pattern string
	match   *regexp.Regexp
	says    string   // what would be right
	common  []string // texts that fit: most need no matching
}

func newForm(pattern, says string) func() *form {
	return sync.OnceValue(func() *form { return &form{pattern: pattern, match: regexp.MustCompile(pattern), says: says} })
}

const ipPattern = `IP[0-6X]([0-9X]|[69]K)[A-D]?[HMSW]?`

// idPattern is that of ids, terminals and commands: no dot, so that paths are
// plain, and no blank.
const idPattern = `^[\p{L}\p{N}][\p{L}\p{N}_-]*$`

// terminalPattern is that of component.terminal.
const terminalPattern = `^[\p{L}\p{N}][\p{L}\p{N}_-]*\.[\p{L}\p{N}][\p{L}\p{N}_-]*$`

const idHelp = "letters, digits, - and _"

// maxID bounds the length of an id.
const maxID = 64

var (
	idForm   = newForm(idPattern, "write letters, digits, - and _")
	ruleForm = newForm(`^[a-z0-9-]+/[a-z0-9-]+$`, "write topic/rule, such as routing/support-too-far")
	// The letters after the digits: A to D, H, M, S and W of IEC 60529; 9K of ISO 20653.
	// Two codes where both tests were passed: IP67 proves nothing of jets.
	ipForm       = newForm(`^`+ipPattern+`(/`+ipPattern+`)?$`, "write a code of IEC 60529, such as IP67 or IP66/IP67")
	studForm     = newForm(`^(M[0-9]+(\.[0-9]+)?|#[0-9]+|[0-9]+/[0-9]+ in|[0-9]+(\.[0-9]+)? (in|mm))$`, "write it as marked, such as M8, 5/16 in, #10 or 10 mm")
	standardForm = newForm(`^[a-z0-9]+([.-][a-z0-9]+)*$`, "write it like ul-1426, sae-j1127 or iso-6722; none if nothing is marked")
	colourForm   = sync.OnceValue(func() *form {
		one := "(" + strings.Join(colours(), "|") + ")"
		pattern := "^" + one + "(/" + one + ")?$"
		return &form{
			pattern: pattern, match: regexp.MustCompile(pattern), common: colours(),
			says: "write one of " + listed(colours(), "or") + ", with a stripe as green/yellow",
		}
	})
)

func colours() []string {
	return []string{
		"black", "blue", "brown", "dark-blue", "green", "grey", "light-blue", "orange", "pink", "purple", "red", "tan", "violet", "white", "yellow",
		"clear", "bare",
	}
}

// plainID reports whether a text can be an id.
func plainID(s string) bool {
	ascii := len(s) > 0 && s[0] != '-' && s[0] != '_'
	for i := 0; i < len(s) && ascii; i++ {
		c := s[i]
		ascii = c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '-' || c == '_'
	}
	return ascii || idForm().match.MatchString(s)
}
