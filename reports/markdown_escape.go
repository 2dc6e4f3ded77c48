package reports

import (
	"html"
	"strings"
)

// markdownText writes a text so that a reader of Markdown shows it as it is. What
// hosts turn into links behind the back of Markdown (addresses, mentions) no
// backslash can stop: such a text becomes code, which is never linked.
func markdownText(s string) string {
	s = Plain(s)
	if linked(s) {
		return markdownCode(s)
	}
	var b strings.Builder
	for _, r := range s {
		if strings.ContainsRune("\\`*_{}[]<>()#+!|&~$", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}

// linked tells whether a host might turn a part of a text into a link: an address
// of a page or of mail, a mention, the number of an issue.
func linked(s string) bool {
	return strings.ContainsAny(s, "@#%") || strings.Contains(s, "://") || strings.Contains(strings.ToLower(s), "www.")
}

// markdownCode writes a text as code, in as many backticks as it takes.
func markdownCode(s string) string {
	s = Plain(s)
	longest, length := 0, 0
	for _, r := range s {
		if r != '`' {
			length = 0
			continue
		}
		length++
		longest = max(longest, length)
	}
	fence := strings.Repeat("`", longest+1)
	if s == "" || strings.HasPrefix(s, "`") || strings.HasSuffix(s, "`") || strings.HasPrefix(s, " ") && strings.HasSuffix(s, " ") {
		s = " " + s + " "
	}
	return fence + s + fence
}

// markdownHTML writes a text as code within a tag of HTML, where Markdown is not
// read.
func markdownHTML(s string) string { return "<code>" + html.EscapeString(Plain(s)) + "</code>" }
