package reports

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/remedy"
	"driploop/model/verdict"
)

// Remedies prints what would clear the breaches of a record: the changes that
// are a matter of the record alone, then the work that is left. The old values
// are by path; written tells whether the changes were made in the file.
func Remedies(w io.Writer, plan *remedy.Plan, old map[string]string, written bool, o Options) error {
	if o.Units == "" {
		o.Units = quantity.Both
	}
	p := newPage(w, o)
	t := &remedyText{recordText: &recordText{page: p, rec: plan.Before, o: o, src: o.Sources[plan.Before.Path]}, old: old}
	t.head()
	if len(plan.Made)+len(plan.Tasks) == 0 {
		t.blank()
		t.noBreach(plan.Before.Counts[verdict.Undecided] > 0, plan.Before.Counts[verdict.Waived] > 0)
	}
	if len(plan.Made) > 0 {
		title := "CHANGES THAT CLEAR A BREACH"
		if written {
			title = "CHANGED IN THE RECORD"
		}
		t.heading(title, fmt.Sprint(len(plan.Made)))
		t.hang(0, 0, txt("Each was proven by judging again. The record then says what is to be fitted: isolate, fit it, and look again."))
		for _, item := range plan.Made {
			t.item(item)
		}
	}
	if len(plan.Tasks) > 0 {
		t.heading("WORK TO DO", fmt.Sprint(len(plan.Tasks)))
		t.hang(0, 0, txt("Worst first. What follows \"then set\" is written when the work is done, and was proven by judging again."))
		for _, item := range plan.Tasks {
			t.item(item)
		}
	}
	t.blank()
	t.entry(in(strong, "before"), txt(countText(plan.Before.Counts)))
	t.entry(in(strong, "after"), txt(countText(plan.After.Counts)))
	t.blank()
	t.hang(0, 0, txt(Caution))
	return p.close()
}

// remedyText writes the remedies of one record.
type remedyText struct {
	*recordText
	old map[string]string
}

func (t *remedyText) item(i remedy.Item) {
	v := i.Breach
	t.blank()
	t.entry(in(severityInk(v.Severity), strings.ToUpper(v.Severity.String())), in(strong, v.Rule.Title))
	t.entry(in(faint, "rule"), txt(v.Rule.ID))
	t.entry(in(faint, "place"), txt(t.where(v)+", "+v.Subject))
	t.entry(in(faint, "finding"), txt(t.say(v, v.Says)))
	t.entry(in(faint, "remedy"), txt(t.say(v, v.Remedy)))
	if i.Cure == nil {
		t.entry(in(faint, "task"), txt("Work for hands, as the remedy says; record what was done and judge again."))
		return
	}
	t.cure("change", *i.Cure)
	const most = 3 // further ones are dearer still
	for n, other := range i.Others {
		if n == most {
			break
		}
		t.cure("or", other)
	}
}

// cure prints what one cure changes.
func (t *remedyText) cure(label string, c remedy.Cure) {
	if c.Work {
		label = map[string]string{"change": "then set", "or": "or set"}[label]
	}
	for n, change := range c.Changes {
		if n > 0 {
			label = ""
		}
		t.entry(in(faint, label), txt(t.change(change)))
	}
	if c.CopperKG > 0 {
		t.entry(txt(""), txt(quantity.New(c.CopperKG, "kg").Format(t.o.Units)+" more copper"))
	}
	if len(c.Again) > 0 {
		t.entry(in(faint, "take anew"), txt(byPart(c.Again)))
	}
}

func (t *remedyText) change(c record.Change) string {
	was := "was not written"
	if value := oldValue(c, t.old); value != "" {
		was = "was " + value
	}
	return fmt.Sprintf("%s: %s (%s)", c.Path, c.Value, was)
}

// byPart lists entries by the part that they belong to, those of both ends once:
// conductors.P1: diameter, ends.*.barrel.
func byPart(paths []string) string {
	var parts []string
	entries := map[string][]string{}
	for _, path := range paths {
		part, entry := path, ""
		if steps := strings.SplitN(path, ".", 3); len(steps) == 3 {
			part, entry = steps[0]+"."+steps[1], steps[2]
		}
		if _, known := entries[part]; !known {
			parts = append(parts, part)
		}
		entries[part] = append(entries[part], entry)
	}
	for i, part := range parts {
		var words []string
		for _, entry := range entries[part] {
			other := strings.Replace(entry, "ends.from.", "ends.to.", 1)
			if other != entry && slices.Contains(entries[part], other) {
				entry = strings.Replace(entry, "ends.from.", "ends.*.", 1)
			} else if from := strings.Replace(entry, "ends.to.", "ends.from.", 1); from != entry && slices.Contains(entries[part], from) {
				continue
			}
			if entry != "" && !slices.Contains(words, entry) {
				words = append(words, entry)
			}
		}
		if len(words) > 0 {
			parts[i] = part + ": " + strings.Join(words, ", ")
		}
	}
	return strings.Join(parts, "; ")
}
