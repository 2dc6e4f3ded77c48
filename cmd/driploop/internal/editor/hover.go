package editor

import (
	"fmt"
	"strings"

	"driploop/model/circuit"
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/verdict"
)

// hover tells of the entry under the cursor: of a part of the boat what its
// circuit computes to and the pages of the rules it breaks, of a key what
// belongs there.
func (s *server) hover(d *document, p position) (any, error) {
	path, at, ok := d.entryAt(p)
	if word, r := d.wordAt(p); word != "" {
		if named, is := d.named(word); is && (!ok || !inside(recordPosition(d.lines, p), at)) {
			text, err := s.about(d, named)
			return &hover{Contents: markup{"markdown", text}, Range: r}, err
		}
	}
	if !ok {
		return nil, nil
	}
	text := d.explain(path)
	if record.PartOf(path) == path && strings.Contains(path, ".") {
		about, err := s.about(d, path)
		if err != nil {
			return nil, err
		}
		text = about
	}
	if text == "" {
		return nil, nil
	}
	return &hover{Contents: markup{"markdown", text}, Range: lspRange(d.lines, at)}, nil
}

func inside(p verdict.Position, r verdict.Range) bool { return !after(r.Start, p) && !after(p, r.End) }

// explain says what the format holds at a path.
func (d *document) explain(path string) string {
	f, ok := record.Describe(path, d.kindOf)
	if !ok {
		return ""
	}
	text := "**" + escape(f.Key) + "**: " + escape(f.Says)
	if len(f.Words) > 0 {
		text += "\n\nOne of " + strings.Join(f.Words, ", ") + "."
	} else if f.Example != "" {
		text += "\n\nFor example `" + f.Example + "`."
	}
	return text
}

func (d *document) kindOf(id string) string {
	if r := d.known(); r != nil {
		return r.ComponentKind(id)
	}
	return ""
}

// about tells what the circuit makes of a part, and what is wrong with it.
func (s *server) about(d *document, path string) (string, error) {
	g := d.lastGood()
	if g == nil {
		return "", nil
	}
	_, id, _ := strings.Cut(path, ".")
	var b strings.Builder
	fmt.Fprintf(&b, "**%s**\n\n", escape(path))
	rows(&b, g.analysis, path, id)
	judged, err := s.judged(g)
	if err != nil || judged == nil {
		return b.String(), err
	}
	for i := range judged.Verdicts {
		v := &judged.Verdicts[i]
		if v.Outcome != verdict.Breach || record.PartOf(v.Subject) != path {
			continue
		}
		page, err := s.program.Page(v.Rule.ID)
		if err != nil {
			return "", err
		}
		fmt.Fprintf(&b, "\n---\n%s\n", page)
	}
	return b.String(), nil
}

// rows lists the figures of a part as a table.
func rows(b *strings.Builder, a *circuit.Analysis, path, id string) {
	type row struct {
		name string
		f    figure.Figure
	}
	var all []row
	switch {
	case a.Conductors[id] != nil && strings.HasPrefix(path, "conductors."):
		c := a.Conductors[id]
		all = []row{
			{"greatest current", c.Current},
			{"allowable where it runs", c.Allowable},
			{"bundled", c.Bundled},
			{"protected at", c.Guard},
			{"least fault current", c.FaultLowA},
			{"greatest fault current", c.FaultHighA},
			{"hottest", c.TemperatureC},
			{"resistance, hot", c.RHot},
		}
	case a.Devices[id] != nil:
		v := a.Devices[id]
		all = []row{{"greatest current", v.RunningA}, {"least fault current", v.FaultLowA}, {"greatest fault current", v.FaultHighA}, {"circuit", v.NominalV}}
	case a.Loads[id] != nil:
		l := a.Loads[id]
		all = []row{{"current", l.Current}, {"voltage at it", l.VoltageV}, {"drop by the formula", l.DropFormulaV}, {"drop in the network", l.DropNetworkV}, {"locked rotor", l.StallA}}
	case a.Batteries[id] != nil:
		v := a.Batteries[id]
		all = []row{{"open circuit", v.OpenV}, {"least internal resistance", v.ResistanceLow}, {"greatest internal resistance", v.ResistanceHigh}}
	case a.Components[id] != nil:
		c := a.Components[id]
		all = []row{{"greatest current", c.Through}, {"surge", c.Surge}, {"circuit", c.NominalV}}
	}
	if len(all) == 0 {
		return
	}
	b.WriteString("| computed | |\n|---|---|\n")
	for _, r := range all {
		value := "open"
		if r.f.Known {
			value = quantity.New(r.f.Value, r.f.Unit).Format(quantity.Both)
		}
		fmt.Fprintf(b, "| %s | %s |\n", r.name, escape(value))
	}
}

// escape keeps a text from being taken for Markdown.
func escape(text string) string {
	return strings.NewReplacer("\\", "\\\\", "*", "\\*", "_", "\\_", "`", "\\`", "<", "&lt;", "|", "\\|", "[", "\\[", "#", "\\#").Replace(text)
}
