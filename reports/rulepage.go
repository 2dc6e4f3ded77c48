package reports

import (
	"io"
	"regexp"
	"slices"
	"strings"

	"driploop/model/quantity"
	"driploop/model/verdict"
)

// RulePage is all that a reader is told of one rule.
type RulePage struct {
	Rule    *verdict.Rule
	Sources []*verdict.Source // those that the rule cites
	Related []*verdict.Rule   // those that it names, or that name it
	Limits  []RuleLimit
	Needs   []RuleNeed
	Entries []RuleEntry // all that its needs come from
	Breach  RuleExample // a record that breaks the rule
	Cure    RuleExample // the same put right
	Open    RuleExample // the same with something missing
}

// RuleLimit is a limit of the rule in one practice set.
type RuleLimit struct {
	Set     string
	Clause  string // where it stands; empty where no clause is known
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

// RuleEntry is an entry of a record that a rule looks at.
type RuleEntry struct {
	Path    string // with stars for what differs, as in conductors.*.size
	Says    string // what it is
	Example string // one that a record could hold, in YAML
	When    string // in which cases, where not in all
}

// RuleExample is a record in YAML with a line on what it shows.
type RuleExample struct {
	Says string
	Text string
}

// RuleText writes the page of a rule for a person.
func RuleText(w io.Writer, page *RulePage, o Options) error {
	return rulePage(&textSheet{page: newPage(w, o)}, page, o)
}

// RuleMarkdown writes the page of a rule in Markdown.
func RuleMarkdown(w io.Writer, page *RulePage, o Options) error {
	return rulePage(newMarkdownSheet(w), page, o)
}

func rulePage(s sheet, page *RulePage, o Options) error {
	if o.Units == "" {
		o.Units = quantity.Both
	}
	r := &rulePager{sheet: s, rule: page.Rule, of: page, o: o}
	r.head()
	r.limits()
	r.sources()
	r.needs()
	r.example("BROKEN", page.Breach)
	r.example("PUT RIGHT", page.Cure)
	r.example("NOT TO BE DECIDED", page.Open)
	r.related()
	r.para(Caution)
	return r.close()
}

// rulePager writes the page of a rule on a sheet.
type rulePager struct {
	sheet
	rule *verdict.Rule
	of   *RulePage
	o    Options
}

func (r *rulePager) head() {
	r.title(severityInk(r.rule.Severity), strings.ToUpper(r.rule.Severity.String()), r.rule.Title)
	r.entry("rule", r.rule.ID+ofYard(r.rule))
	r.entry("judges", r.rule.Applies)
	r.entry("why", r.rule.Why)
	r.entry("at worst", Consequence(r.rule.Severity))
	if says := openPlaces(r.rule.Says); !bareFinding.MatchString(says) {
		r.entry("finding", says)
	}
	r.entry("remedy", openPlaces(r.rule.Remedy))
	r.entry("since", r.rule.Since)
}

// bareFinding is one that the breach words itself, such as "{fault}".
var bareFinding = regexp.MustCompile(`^(‹[^›]*›|[ ,;:])*$`)

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

func (r *rulePager) limits() {
	if len(r.of.Limits) == 0 {
		return
	}
	r.section("LIMITS", "by practice set; the strictest in force decides")
	rows := newTable("practice set", "clause", "where", "limit")
	for _, l := range r.of.Limits {
		var parts []string
		for _, f := range shown(l.Figures) {
			text := f.Text
			if text == "" {
				text = glued(f.Print(r.o.Units))
			}
			parts = append(parts, strings.TrimPrefix(spaced(f.Name)+" "+r.bound(f.Name)+text, " "))
		}
		rows.add(l.Set, l.Clause, l.When, strings.Join(parts, ", "))
	}
	r.table(rows)
}

// bound says whether a limit is a most or a least, as the rule's words have it;
// nothing where they do not tell.
func (r *rulePager) bound(figure string) string {
	for _, words := range []string{r.rule.Says, r.rule.Remedy} {
		before, _, found := strings.Cut(words, "{limit."+figure+"}")
		switch {
		case !found:
		case strings.HasSuffix(before, "at least "):
			return "at least "
		case strings.HasSuffix(before, "at most "), strings.HasSuffix(before, "within "):
			return "at most "
		}
	}
	return ""
}

// shown leaves out the area of a limit that is a conductor's size: the size says
// the same in the words of the trade.
func shown(figures []verdict.Figure) []verdict.Figure {
	sized := slices.ContainsFunc(figures, func(f verdict.Figure) bool { return f.Name == "size" })
	return slices.DeleteFunc(slices.Clone(figures), func(f verdict.Figure) bool { return sized && f.Name == "area" })
}

// sources writes each document once, with its authority, and below it the
// clauses and what they ask.
func (r *rulePager) sources() {
	r.section("WHAT IT RESTS ON", plural(len(r.of.Sources), "document"))
	for _, s := range r.of.Sources {
		lines := []string{authorityOf(s)}
		for _, c := range r.rule.Sources {
			if c.Source == s.ID {
				lines = append(lines, citationLine(c))
			}
		}
		r.item(s.Title, edition(s), lines...)
	}
}

// citationLine says what a clause asks, under which set, and how well that is
// known.
func citationLine(c verdict.Citation) string {
	text := c.Asks
	if c.Clause != "" {
		text = c.Clause + ": " + text
	}
	return text + " (" + Trust(c.Trust) + ") [" + c.Set + "]"
}

// Trust says how well a figure or clause has been checked.
func Trust(t verdict.Trust) string {
	if t == verdict.Read {
		return "clause read"
	}
	return trustText(t)
}

func edition(s *verdict.Source) string {
	if s.Edition == "" {
		return ""
	}
	return "(" + s.Edition + ")"
}

// authorityOf says what force a document has, whose it is and whom it is for.
func authorityOf(s *verdict.Source) string {
	text := capital(string(s.Force))
	if s.Issuer != "" && s.Force != verdict.Practice {
		text += ", " + s.Issuer
	}
	switch {
	case s.Scope == "":
		return text
	case s.Force == verdict.Law:
		return text + "; binds " + s.Scope
	}
	return text + "; " + s.Scope
}

func (r *rulePager) needs() {
	if len(r.of.Needs) == 0 {
		return
	}
	r.section("WHAT THE RECORD HAS TO SAY", "or the rule cannot be decided")
	if len(r.of.Entries) == 0 {
		r.item("Nothing more", " than every record says: all comes from its circuit.")
	}
	for _, e := range r.of.Entries {
		text := ": " + strings.TrimSuffix(e.Says, ".")
		if e.Example != "" {
			text += ", such as " + e.Example
		}
		if e.When != "" {
			text += "; " + e.When
		}
		r.item(e.Path, text)
	}
}

// mark is where the verdicts of an example point.
var mark = regexp.MustCompile(`# (want|open) .*`)

func (r *rulePager) example(title string, e RuleExample) {
	if e.Text == "" {
		return
	}
	r.section(title, e.Says)
	text := e.Text
	if first, rest, found := strings.Cut(text, "\n"); found && strings.HasPrefix(first, "# ") {
		text = rest // without the line on what it shows
	}
	r.code(mark.ReplaceAllStringFunc(text, func(m string) string {
		if strings.HasPrefix(m, "# want") {
			return "# <- breached"
		}
		return "# <- cannot be decided"
	}))
}

func (r *rulePager) related() {
	if len(r.of.Related) == 0 {
		return
	}
	r.section("RELATED RULES", "")
	for _, other := range r.of.Related {
		r.item(other.ID, ": "+other.Title)
	}
}
