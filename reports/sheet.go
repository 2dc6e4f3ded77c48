package reports

import (
	"bufio"
	"io"
	"strings"
)

// sheet is what pages of the handbook are written on: text for a terminal, or
// Markdown.
type sheet interface {
	// title begins a page; label stands before it, such as a signal word.
	title(i ink, label, text string)
	// entry is a labelled paragraph of the page's head.
	entry(label, text string)
	// section begins a part of the page, with a word on what it holds.
	section(title, about string)
	para(text string)
	// item is a paragraph that begins in bold, with lines below it.
	item(head, tail string, lines ...string)
	table(t *table)
	// code is text that is shown as it is.
	code(text string)
	close() error
}

// textSheet is a sheet for a terminal.
type textSheet struct {
	*page
	begun bool
	items bool // the last thing written was an item
}

func (s *textSheet) title(i ink, label, text string) {
	if s.begun {
		s.blank()
	}
	s.begun, s.items = true, false
	if label == "" {
		s.hang(0, 0, in(strong, flow(text)))
		return
	}
	s.page.entry(in(i, label), in(strong, flow(text)))
}

func (s *textSheet) entry(label, text string) { s.page.entry(in(faint, label), txt(flow(text))) }

func (s *textSheet) section(title, about string) {
	s.items = false
	s.heading(title, flow(about))
}

func (s *textSheet) para(text string) {
	s.items = false
	s.blank()
	s.hang(0, 0, txt(flow(text)))
}

func (s *textSheet) item(head, tail string, lines ...string) {
	if s.items && len(lines) > 0 {
		s.blank()
	}
	s.items = true
	s.hang(0, 2, in(strong, flow(head)), txt(after(tail)))
	for _, line := range lines {
		s.hang(2, 4, txt(flow(line)))
	}
}

func (s *textSheet) table(t *table) {
	s.items = false
	s.page.table(t, 0)
}

func (s *textSheet) code(text string) {
	s.items = false
	for _, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
		s.raw("  " + Plain(line) + "\n")
	}
}

// markdownSheet is a sheet in Markdown (CommonMark, with the tables of GitHub).
type markdownSheet struct {
	out   *bufio.Writer
	begun bool
	list  bool // the last thing written was an entry of a list
}

func newMarkdownSheet(w io.Writer) *markdownSheet { return &markdownSheet{out: bufio.NewWriter(w)} }

func (s *markdownSheet) write(parts ...string) {
	for _, part := range parts {
		_, _ = s.out.WriteString(part) // the writer keeps its first error for close
	}
}

// block begins a block after a blank line; entries of one list stand together.
func (s *markdownSheet) block(list bool) {
	if s.begun && (!list || !s.list) {
		s.write("\n")
	}
	s.begun, s.list = true, list
}

func (s *markdownSheet) title(_ ink, label, text string) {
	s.block(false)
	s.write("# ", inMarkdown(text), "\n")
	if label != "" {
		s.block(false)
		s.write("**", inMarkdown(label), "**\n")
	}
}

func (s *markdownSheet) entry(label, text string) {
	s.block(true)
	s.write("- *", inMarkdown(label), "*: ", inMarkdown(text), "\n")
}

func (s *markdownSheet) section(title, about string) {
	s.block(false)
	s.write("## ", inMarkdown(capital(strings.ToLower(title))), "\n")
	if about != "" {
		s.para(capital(about))
	}
}

func (s *markdownSheet) para(text string) {
	s.block(false)
	s.write(inMarkdown(text), "\n")
}

func (s *markdownSheet) item(head, tail string, lines ...string) {
	s.block(true)
	s.write("- **", inMarkdown(head), "**", after(inMarkdown(tail)), "\n")
	for _, line := range lines {
		s.write("  - ", inMarkdown(line), "\n")
	}
}

func (s *markdownSheet) table(t *table) {
	s.block(false)
	row := func(cells []string) {
		for _, cell := range cells {
			s.write("| ", inMarkdown(cell), " ")
		}
		s.write("|\n")
	}
	row(t.heads)
	for i := range t.heads {
		if t.right[i] {
			s.write("|---:")
		} else {
			s.write("|---")
		}
	}
	s.write("|\n")
	for _, cells := range t.rows {
		row(cells)
	}
}

// code indents nothing: a fence longer than any in the text holds it.
func (s *markdownSheet) code(text string) {
	s.block(false)
	fence := "```"
	for strings.Contains(text, fence) {
		fence += "`"
	}
	s.write(fence, "yaml\n")
	for _, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
		s.write(Plain(line), "\n")
	}
	s.write(fence, "\n")
}

func (s *markdownSheet) close() error { return s.out.Flush() }

// after is the text behind the bold head of an item, parted from it by a space
// or a colon.
func after(text string) string {
	text = flow(text)
	if text == "" || text[0] == ':' {
		return text
	}
	return " " + text
}

// inMarkdown writes text so that Markdown shows it as it is, on one line.
func inMarkdown(text string) string {
	plain := Plain(strings.ReplaceAll(flow(text), string(glue), " "))
	return markdownMarks.Replace(plain)
}

// markdownMarks escapes what Markdown or HTML would read as a mark.
var markdownMarks = strings.NewReplacer(
	`\`, `\\`, "`", "\\`", "*", `\*`, "[", `\[`, "]", `\]`, "<", "&lt;", ">", "&gt;", "&", "&amp;", "|", `\|`,
)
