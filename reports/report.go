// Package reports renders the result of a run. Each format is one file; all of
// them read the same tree and change nothing in it.
package reports

import (
	"io"
	"slices"
	"strings"
	"time"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// Caution is what every report says to whoever might act on it.
const Caution = "This report helps a qualified person to inspect the installation; it does not replace that inspection. " +
	"Local codes, the makers' instructions and licensed practice prevail over it. " +
	"Batteries can burn and explode: isolate them before any work."

// Options are the choices of whoever reads a report. The zero value is usable.
type Options struct {
	Units  quantity.System // empty: what suits the format
	All    bool            // list met and not-applicable verdicts too
	Colour bool            // the reader's terminal shows colour
	Width  int             // columns of the reader's terminal; 0: 80
	At     time.Time       // printed where a format has a time; zero: no time is printed
	// Fails tells whether a verdict fails the check; nil: every breach does.
	Fails func(*verdict.Verdict) bool
	// Sources holds the text of each record by its path, for excerpts.
	Sources map[string]*Source
}

// Format is one way to render a run.
type Format struct {
	Name  string
	About string
	// Met is set where what is met is listed without Options.All, too.
	Met bool
	// Open begins to write a run, record by record.
	Open func(w io.Writer, head verdict.Run, o Options) Stream
}

// Formats lists the formats in the order that help texts show them.
func Formats() []Format {
	return []Format{
		{Name: "text", About: "for a person at a terminal", Open: openText},
		{Name: "json", About: "for programs, driploop.verdicts/1", Open: openJSON},
		{Name: "sarif", About: "for code review and editors, SARIF 2.1.0", Open: openSARIF},
		{Name: "junit", About: "for consoles that show test results, JUnit XML", Open: openJUnit, Met: true},
		{Name: "md", About: "for a merge request, Markdown", Open: openMarkdown},
	}
}

// ListsMet tells whether a report in the format of that name lists what is met.
func (o Options) ListsMet(format string) bool {
	return o.All || slices.ContainsFunc(Formats(), func(f Format) bool { return f.Name == format && f.Met })
}

// FormatNames lists the names of the formats.
func FormatNames() []string {
	formats := Formats()
	names := make([]string, len(formats))
	for i, f := range formats {
		names[i] = f.Name
	}
	return names
}

// either lists words as "a, b or c".
func either(words []string) string {
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}
