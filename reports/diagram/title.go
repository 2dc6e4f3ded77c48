package diagram

import (
	"fmt"
	"strings"

	"driploop/model/verdict"
)

const (
	titleHeight = 38.0
	titleSize   = 14.0
)

// Title is what the diagram shows, on one line.
func (d *Diagram) Title() string {
	parts := []string{}
	for _, t := range []string{d.rec.Job.Number.Or(""), d.rec.Job.Title.Or("")} {
		if t != "" {
			parts = append(parts, t)
		}
	}
	if len(parts) == 0 {
		return "One-line diagram"
	}
	return "One-line diagram of " + clean(strings.Join(parts, ", "))
}

// About says in words what the diagram holds.
func (d *Diagram) About() string {
	about := fmt.Sprintf("%s and %s.", count(len(d.rec.Components), "component"), count(len(d.rec.Conductors), "conductor"))
	if marked := d.marked(); marked != "" {
		about += " Breaches: " + marked + "."
	}
	about += " Sources stand on the left, loads on the right. "
	if d.options.Returns {
		return about + "Return and bonding conductors are drawn, too."
	}
	return about + "Return and bonding conductors are not drawn as lines; they are listed below."
}

// marked counts the breaches by severity, worst first.
func (d *Diagram) marked() string {
	counts := map[verdict.Severity]int{}
	for i := range d.verdicts {
		if d.verdicts[i].Outcome == verdict.Breach {
			counts[d.verdicts[i].Severity]++
		}
	}
	var parts []string
	for s := verdict.Danger; ; s-- {
		if counts[s] > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", counts[s], s))
		}
		if s == verdict.Notice {
			return strings.Join(parts, ", ")
		}
	}
}

func count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

func (d *Diagram) paintTitle(c Canvas) {
	c.Text(Point{0, titleSize * ascent}, clip(d.Title(), titleSize, true, d.width), Type{Ink: Words, Size: titleSize, Bold: true})
	var parts []string
	if name := d.rec.Vessel.Name.Or(""); name != "" {
		parts = append(parts, name)
	}
	if d.rec.Vessel.System.Is() {
		parts = append(parts, "system of "+d.rec.Vessel.System.V.Format(d.words.units))
	}
	parts = append(parts, count(len(d.rec.Components), "component"), count(len(d.rec.Conductors), "conductor"))
	if marked := d.marked(); marked != "" {
		parts = append(parts, "breaches: "+marked)
	}
	c.Text(Point{0, titleSize*ascent + 14}, clip(clean(strings.Join(parts, ", ")), detailSize, false, d.width), Type{Ink: Faint, Size: detailSize})
}
