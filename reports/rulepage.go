package reports

import (
	"fmt"
	"io"
	"strings"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// RulePage is all that a reader is told of one rule.
type RulePage struct {
	Rule    *verdict.Rule
	Sources []*verdict.Source // those that the rule cites
	Limits  []RuleLimit
	Needs   []RuleNeed
	Breach  RuleExample // a record that breaks the rule
	Cure    RuleExample // the same put right
	Open    RuleExample // the same with something missing
}

// RuleLimit is a limit of the rule in one practice set.
type RuleLimit struct {
	Set     string
	When    string // the condition in words; empty if it always holds
	Figures []verdict.Figure
}

// RuleNeed is a fact that the rule needs, and the entries of a record that it
// comes from.
type RuleNeed struct {
	Fact    string
	When    string // in which cases, where not in all
	Entries []string
}

// RuleExample is a record in YAML with a line on what it shows.
type RuleExample struct {
	Says string
	Text string
}

// RuleText writes the page of a rule for a person.
func RuleText(w io.Writer, page *RulePage, o Options) error {
	if o.Units == "" {
		o.Units = quantity.Both
	}
	r := &ruleText{page: newPage(w, o), rule: page.Rule, of: page, o: o}
	r.head()
	r.limits()
	r.sources()
	r.needs()
	r.example("BROKEN", page.Breach)
	r.example("PUT RIGHT", page.Cure)
	r.example("NOT TO BE DECIDED", page.Open)
	r.blank()
	r.hang(0, 0, txt(Caution))
	return r.close()
}

type ruleText struct {
	*page
	rule *verdict.Rule
	of   *RulePage
	o    Options
}

func (r *ruleText) head() {
	word := strings.ToUpper(r.rule.Severity.String())
	r.entry(in(severityInk(r.rule.Severity), word), in(strong, flow(r.rule.Title)))
	r.entry(in(faint, "rule"), txt(r.rule.ID))
	r.entry(in(faint, "judges"), txt(flow(r.rule.Applies)))
	r.entry(in(faint, "why"), txt(flow(r.rule.Why)))
	r.entry(in(faint, "at worst"), txt(Consequence(r.rule.Severity)))
	r.entry(in(faint, "remedy"), txt(openPlaces(flow(r.rule.Remedy))))
	if len(r.rule.Related) > 0 {
		r.entry(in(faint, "see also"), txt(strings.Join(r.rule.Related, ", ")))
	}
	r.entry(in(faint, "since"), txt(r.rule.Since))
}

// Consequence says what a severity means, after the signal words of ANSI Z535:
// what can come of it if nothing is done.
func Consequence(s verdict.Severity) string {
	switch s {
	case verdict.Danger:
		return "it kills or maims unless it is put right"
	case verdict.Warning:
		return "it can kill or maim"
	case verdict.Caution:
		return "it can hurt someone"
	}
	return "it harms property, not people"
}

// openPlaces shows the places of a template as words: of "{limit.length}" the
// reader is told "the limit of length".
func openPlaces(template string) string {
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(template, "{")
		b.WriteString(before)
		if !found {
			return b.String()
		}
		name, after, _ := strings.Cut(rest, "}")
		if limit, ok := strings.CutPrefix(name, "limit."); ok {
			name = "limit of " + limit
		}
		b.WriteString("‹" + spaced(name) + "›")
		template = after
	}
}

func (r *ruleText) limits() {
	if len(r.of.Limits) == 0 {
		return
	}
	r.heading("LIMITS", "by practice set; the strictest in force decides")
	rows := newTable("practice set", "where", "limit")
	for _, l := range r.of.Limits {
		var parts []string
		for _, f := range l.Figures {
			parts = append(parts, spaced(f.Name)+" "+glued(f.Print(r.o.Units)))
		}
		rows.add(l.Set, l.When, strings.Join(parts, ", "))
	}
	r.table(rows, 0)
}

func (r *ruleText) sources() {
	r.heading("WHAT IT RESTS ON", plural(len(r.rule.Sources), "source"))
	for i, c := range r.rule.Sources {
		if i > 0 {
			r.blank()
		}
		s := r.source(c.Source)
		r.hang(0, 2, in(strong, flow(s.Title)), txt(clauseAndEdition(c.Clause, s.Edition)))
		r.hang(2, 2, txt("asks: "+flow(c.Asks)))
		authority := string(s.Force)
		if s.Scope != "" {
			authority += ", " + flow(s.Scope)
		}
		if trust := trustText(c.Trust); trust != "" {
			authority += "; " + trust
		}
		r.hang(2, 2, txt("authority: "+authority))
		r.hang(2, 2, txt("in force under: "+c.Set))
	}
}

func clauseAndEdition(clause, edition string) string {
	text := ""
	if clause != "" {
		text += ", " + flow(clause)
	}
	if edition != "" {
		text += " (" + flow(edition) + ")"
	}
	return text
}

func (r *ruleText) source(id string) *verdict.Source {
	for _, s := range r.of.Sources {
		if s.ID == id {
			return s
		}
	}
	return &verdict.Source{ID: id, Title: id}
}

func (r *ruleText) needs() {
	if len(r.of.Needs) == 0 {
		return
	}
	r.heading("WHAT THE RECORD HAS TO SAY", "or the rule cannot be decided")
	for _, n := range r.of.Needs {
		text := factWords(n.Fact)
		if n.When != "" {
			text += ", " + n.When
		}
		if len(n.Entries) == 0 {
			r.hang(0, 2, txt(text+": from what every record says, and its circuit"))
			continue
		}
		r.hang(0, 2, in(strong, strings.Join(n.Entries, ", ")), txt(": "+text))
	}
}

// factWords turns the name of a fact into words: of "rated_v", "rated (V)".
func factWords(fact string) string {
	plain, q := quantity.FromFact(fact, 1)
	words := strings.ReplaceAll(spaced(plain), ".", "'s ")
	if q.Unit == "" {
		return words
	}
	return words + " (" + quantity.Symbol(q.Unit) + ")"
}

func (r *ruleText) example(title string, e RuleExample) {
	if e.Text == "" {
		return
	}
	r.heading(title, flow(e.Says))
	for i, line := range strings.Split(strings.TrimSuffix(e.Text, "\n"), "\n") {
		if i == 0 && strings.HasPrefix(line, "# ") {
			continue // the line on what it shows
		}
		r.raw("  " + Plain(line) + "\n")
	}
}

// RuleList writes the rules by topic, for a person.
func RuleList(w io.Writer, rules []*verdict.Rule, o Options) error {
	p := newPage(w, o)
	topic := ""
	for _, r := range rules {
		if t, _, _ := strings.Cut(r.ID, "/"); t != topic {
			if topic != "" {
				p.blank()
			}
			topic = t
			p.hang(0, 0, in(strong, topic))
		}
		word := strings.ToUpper(r.Severity.String())
		p.labelled(in(severityInk(r.Severity), word), margin, txt(r.ID))
		p.hang(margin+2, margin+2, txt(flow(r.Title)))
	}
	p.blank()
	p.hang(0, 0, txt(fmt.Sprintf("%s. Read one with: driploop cite RULE", plural(len(rules), "rule"))))
	return p.close()
}
