package reports

import (
	"github.com/fatih/color"

	"driploop/model/verdict"
)

// ink is the look of a text on a terminal with colour. It never carries meaning
// that the words do not.
type ink uint8

const (
	ordinary ink = iota
	strong
	faint
	dangerInk
	warningInk
	cautionInk
	noticeInk
	inkCount
)

// inks are the colours of each ink; nil entries are left as they are.
type inks [inkCount]*color.Color

// newInks fills the signal words that ask for action before the boat is used,
// and only tints the others.
func newInks(on bool) inks {
	var set inks
	if !on {
		return set
	}
	set[strong] = color.New(color.Bold)
	set[faint] = color.New(color.Faint)
	set[dangerInk] = color.New(color.FgHiWhite, color.BgRed, color.Bold)
	set[warningInk] = color.New(color.FgBlack, color.BgYellow)
	set[cautionInk] = color.New(color.FgYellow, color.Underline)
	set[noticeInk] = color.New(color.FgCyan, color.Underline)
	for _, c := range set {
		if c != nil {
			c.EnableColor()
		}
	}
	return set
}

func (set *inks) paint(i ink, text string) string {
	if c := set[i]; c != nil && text != "" {
		return c.Sprint(text)
	}
	return text
}

func severityInk(s verdict.Severity) ink {
	return [...]ink{verdict.Notice: noticeInk, verdict.Caution: cautionInk, verdict.Warning: warningInk, verdict.Danger: dangerInk}[s]
}
