package reports

import (
	"fmt"
	"regexp"
	"strings"

	"driploop/model/verdict"
)

// markdownText writes a text so that a reader of Markdown shows it as it is. What
// hosts turn into links behind the back of Markdown (addresses, mentions) no
// backslash can stop: such a text becomes code, which is never linked.
func markdownText(s string) string {
	s = Plain(s)
	if linked.MatchString(s) {
		return markdownCode(s)
	}
	var b strings.Builder
	for _, r := range s {
		if strings.ContainsRune("\\`*_[]<>#|&~$", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}

// linked is what a host might turn into a link: an address of a page or of mail,
// a mention, the number of an issue.
var linked = regexp.MustCompile(`(?i)://|www\.|@|[#%!~$&^]\w`)

// markdownCode writes a text as code, in as many backticks as it takes. A text
// with a bar, which would end a cell of a table, is spelt out in HTML.
func markdownCode(s string) string {
	s = Plain(s)
	if s == "" {
		return ""
	}
	if strings.Contains(s, "|") {
		return "<code>" + entities(s) + "</code>"
	}
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
	if s[0] == '`' || s[len(s)-1] == '`' || s[0] == ' ' && s[len(s)-1] == ' ' {
		s = " " + s + " "
	}
	return fence + s + fence
}

// entities spells out all that Markdown or HTML could read as more than text.
func entities(s string) string {
	var b strings.Builder
	for _, r := range s {
		if r > ' ' && r <= '~' && !isWord(r) {
			fmt.Fprintf(&b, "&#%d;", r)
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}

func isWord(r rune) bool {
	return r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z'
}

// The marks around a figure in a text: no text from a record has them, since all
// goes through Plain.
const (
	figureBegins = "\x02"
	figureEnds   = "\x03"
)

// markdownSays fills a template of a verdict: its words as text, what comes from
// the record as code.
func markdownSays(v *verdict.Verdict, template string, show func(verdict.Figure) string) string {
	marked := v.Text(flow(template), func(f verdict.Figure) string {
		text := Plain(show(f))
		if f.Text != "" {
			text = markdownCode(text)
		} else {
			text = markdownText(text)
		}
		return figureBegins + text + figureEnds
	})
	var b strings.Builder
	for marked != "" {
		words, rest, _ := strings.Cut(marked, figureBegins)
		b.WriteString(markdownText(words))
		var figure string
		figure, marked, _ = strings.Cut(rest, figureEnds)
		b.WriteString(figure)
	}
	return b.String()
}
