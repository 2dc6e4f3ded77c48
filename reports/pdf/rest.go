package pdf

import (
	"strings"

	"driploop/model/verdict"
	"driploop/reports"
	"driploop/reports/survey"
)

// questions writes what the yard has to answer, with room to write.
func (d *doc) questions(q survey.Questions) {
	d.chapter("Open questions")
	if len(q.Entries)+len(q.Reasons) == 0 {
		d.para(body, 0, "There are none: every rule that applies could be decided.", "")
		return
	}
	if len(q.Entries) > 0 {
		d.para(body, 0, reports.Plural(q.Number, "answer")+" from the yard would let these be decided. Write each into the record, and judge it again.", "")
	}
	for _, one := range q.Entries {
		d.question(one)
	}
	if len(q.Reasons) > 0 {
		d.section("What no entry of the record would answer", "", 10)
		for _, one := range q.Reasons {
			d.bullets(body, 0, []string{strings.Join(one.Whys, "; ") + ", for " + strings.Join(one.For, "; ")})
		}
	}
}

func (d *doc) question(q survey.Question) {
	d.skip(3)
	head := face{mono, "", 8.5, ink}
	names := make([]string, len(q.Asks))
	for i, a := range q.Asks {
		names[i] = a.Entry
	}
	title := strings.Join(names, ", ")
	d.need(float64(d.lines(head, 0, title)+len(q.Asks)+1)*body.leading() + 14)
	d.pen(rule, .2)
	d.Line(d.x(), d.y, d.x()+d.width, d.y)
	d.y += 1
	d.para(head, 0, title, "")
	for _, a := range q.Asks {
		if a.Says != "" {
			d.para(face{sans, "", 8.5, ink}, 0, strings.TrimSpace(a.Says+" "+a.Such), "")
		}
	}
	d.para(small, 0, strings.Join(q.Whys, "; "), "")
	used := d.word(d.x(), d.y+.4, q.Severity.String()) + 1.5
	for i, line := range d.wrap("waiting: "+strings.Join(q.For, ", "), small, d.width-used, d.width) {
		indent := 0.0
		if i == 0 {
			indent = used
		}
		d.line(small, indent, line, "")
	}
	d.y++
	d.fields(q.Fields)
}

// fields writes entries two beside each other, each with a line to write on.
func (d *doc) fields(fields []reports.Field) {
	look := face{mono, "", 7, ink}
	width := (d.width - gutter) / 2
	const room, blank = 58.0, 25.0
	for i := 0; i < len(fields); i += 2 {
		pair := fields[i:min(i+2, len(fields))]
		most := 1
		for _, f := range pair {
			most = max(most, len(d.wrap(fieldText(f), look, room-5, room-5)))
		}
		height := max(float64(most)*look.leading()+1.6, 6.5)
		d.need(height)
		for n, f := range pair {
			x := d.x() + float64(n)*(width+gutter)
			d.pen(soft, .25)
			d.Rect(x, d.y+1.6, 2.6, 2.6, "D")
			for k, line := range d.wrap(fieldText(f), look, room-5, room-5) {
				d.SetXY(x+5, d.y+1.4+float64(k)*look.leading())
				d.CellFormat(0, look.leading(), line, "", 0, "L", false, 0, "")
			}
			d.Line(x+width-blank, d.y+height-1, x+width, d.y+height-1)
		}
		d.y += height
	}
}

func fieldText(f reports.Field) string {
	if f.Where == "" {
		return f.Path
	}
	return f.Path + " (" + f.Where + ")"
}

func (d *doc) schedule(s survey.Schedule) {
	d.chapter("Schedule of circuits")
	d.para(small, 0, "What the circuit computes to. Where something is missing the figure is open.", "")
	if len(s.Problems) > 0 {
		d.section("What could not be solved", "", 10)
		for _, p := range s.Problems {
			d.bullets(body, 0, []string{p.Subject + " (" + p.Place + "): " + p.Says})
		}
	}
	for _, l := range s.Loads {
		d.section(l.ID, l.About, 45)
		for _, f := range l.Facts {
			d.labelled(face{sans, "", 8.5, soft}, reports.Capital(f.Label), face{sans, "", 8.5, ink}, 0, f.Text)
		}
		d.y++
		d.sheet(l.Ways)
	}
	for _, sheet := range s.Sheets {
		d.section(reports.Capital(sheet.Title), sheet.About, 18)
		d.sheet(sheet)
	}
	if len(s.Open.Entries) > 0 {
		d.section("Entries that open figures wait for", "", 10)
		for _, q := range s.Open.Entries {
			paths := make([]string, len(q.Fields))
			for i, f := range q.Fields {
				paths[i] = f.Path
			}
			d.bullets(small, 0, []string{strings.Join(paths, ", ") + ", for " + strings.Join(q.For, ", ")})
		}
	}
}

func (d *doc) sheet(s reports.Sheet) {
	if len(s.Rows) == 0 {
		return
	}
	columns := make([]column, len(s.Columns))
	for i, c := range s.Columns {
		columns[i] = column{c.Head, c.Right}
	}
	rows := make([]row, len(s.Rows))
	for i, r := range s.Rows {
		for _, text := range r {
			rows[i].cells = append(rows[i].cells, cell{text: text})
		}
	}
	d.table(columns, rows)
}

func (d *doc) coverage(c survey.Coverage) {
	d.chapter("Coverage")
	d.section("What no record can show", "", 12)
	d.bullets(body, 0, c.Limits)
	d.section("Judged by", "", 15)
	for _, set := range c.Sets {
		d.labelled(bold, set.Title+" ("+set.ID+")", body, 0, set.About)
		d.y++
	}
	d.section("Documents", "", 20)
	var rows []row
	for _, doc := range c.Documents {
		rows = append(rows, row{id: "document-" + doc.ID, cells: []cell{{text: doc.Title}, {text: doc.Edition}, {text: doc.Force}, {text: doc.Trust}, {text: itoa(doc.Rules)}}})
	}
	d.table([]column{{head: "Document"}, {head: "Edition"}, {head: "Force"}, {head: "Clauses, and how they were checked"}, {"Rules", true}}, rows)
	d.section("Rules that had something to judge", "", 20)
	d.table([]column{{head: "Rule"}, {"Judged", true}, {"Met", true}, {"Breached", true}, {"Undecided", true}, {"Waived", true}, {head: "Rests on"}}, ruleRows(c.Topics))
	if len(c.Silent) > 0 {
		d.section("Rules that found nothing to judge", "", 10)
		d.para(body, 0, reports.Plural(len(c.Silent), "rule")+" in force had no part of this record to judge: "+strings.Join(c.Silent, ", ")+".", "")
	}
}

func ruleRows(topics []survey.Topic) []row {
	var rows []row
	for _, t := range topics {
		rows = append(rows, row{band: reports.Capital(t.Name)})
		for _, r := range t.Rules {
			count := func(o verdict.Outcome) cell { return cell{text: itoa(r.Counts[o])} }
			rows = append(rows, row{id: "rule-" + r.ID, cells: []cell{
				{text: r.Title + " (" + r.ID + ")"},
				{text: itoa(r.Judged)},
				count(verdict.Met), count(verdict.Breach),
				count(verdict.Undecided), count(verdict.Waived),
				{text: strings.Join(r.Documents, ", ")},
			}})
		}
	}
	return rows
}

// working writes how each figure was got, small and in two columns, as an
// appendix.
func (d *doc) working(parts []*survey.Part) {
	if len(parts) == 0 {
		return
	}
	d.newPage()
	d.chapter("Working")
	d.para(small, 0, "How each figure of the schedule was got: formula, source, and what went in, each with its place in the record.", "")
	d.y += 2
	d.flow = columns{number: 2, top: d.y}
	for _, p := range parts {
		d.skip(1.5)
		d.need(16)
		d.anchor(p.ID)
		d.para(face{sans, "B", 8, ink}, 0, p.Subject, "")
		for _, f := range p.Figures {
			d.need(2 * tiny.leading())
			d.figure(f, tiny, 0, false)
		}
	}
	d.flow = columns{number: 1}
}
