package rules

import (
	"io/fs"
	"path"
	"slices"
	"strings"

	"driploop/model/verdict"
)

// clausesFolder holds a list of clauses for each document that is covered
// clause by clause.
const clausesFolder = "clauses"

// clauseList is a list of the clauses of one document, as its file holds it.
type clauseList struct {
	Source  string      `yaml:"source"`
	Covers  string      `yaml:"covers"`
	Clauses []clauseRow `yaml:"clauses"`
}

type clauseRow struct {
	Clause string       `yaml:"clause"`
	Asks   string       `yaml:"asks"`
	Left   verdict.Left `yaml:"left"`
	Why    string       `yaml:"why"`
	As     string       `yaml:"as"` // a clause of the same document that asks the same
}

// Coverage returns, for each document that is listed clause by clause, its
// clauses with the rules that judge them, in the order of the register of
// sources. The error names every clause that has neither a rule nor a reason,
// and every citation of a clause that is not in the list.
func (e *Engine) Coverage() ([]verdict.Coverage, error) {
	var faults problems
	var all []verdict.Coverage
	for _, id := range e.reg.order {
		file := path.Join(clausesFolder, id+".yaml")
		if _, err := fs.Stat(e.files, file); err != nil {
			continue
		}
		var held clauseList
		if err := readYAML(e.files, file, &held); err != nil {
			faults.add(file, 0, "%v", err)
			continue
		}
		c := coverer{file: file, source: e.reg.sources[id], of: held, rules: e.rules, faults: &faults}
		all = append(all, c.cover())
	}
	return all, faults.err()
}

// coverer joins the clauses of a document with the rules that cite them.
type coverer struct {
	file   string
	source *verdict.Source
	of     clauseList
	rules  []*rule
	faults *problems
}

func (c *coverer) cover() verdict.Coverage {
	if c.of.Source != c.source.ID || c.of.Covers == "" {
		c.faults.add(c.file, 0, "names source %q and covers %q; it lists the clauses of %s and says which they are", c.of.Source, c.of.Covers, c.source.ID)
	}
	all := verdict.Coverage{Source: c.source, Covers: c.of.Covers}
	seen := map[string]bool{}
	for _, row := range c.of.Clauses {
		if seen[row.Clause] {
			c.faults.add(c.file, 0, "clause %s stands twice", row.Clause)
		}
		seen[row.Clause] = true
		row = c.resolved(row)
		clause := verdict.Clause{Clause: row.Clause, Asks: row.Asks, Left: row.Left, Why: row.Why}
		clause.Rules = c.citing(row)
		c.check(row, clause.Rules)
		all.Clauses = append(all.Clauses, clause)
	}
	c.strays()
	return all
}

// resolved is a clause with what is said of the one that asks the same.
func (c *coverer) resolved(row clauseRow) clauseRow {
	if row.As == "" {
		return row
	}
	at := slices.IndexFunc(c.of.Clauses, func(other clauseRow) bool { return other.Clause == row.As })
	if at < 0 {
		c.faults.add(c.file, 0, "clause %s asks the same as %s, which is not in the list", row.Clause, row.As)
		return row
	}
	row.Left, row.Why = c.of.Clauses[at].Left, c.of.Clauses[at].Why
	if row.Asks == "" {
		row.Asks = "the same as " + row.As + ": " + c.of.Clauses[at].Asks
	}
	return row
}

// citing returns the ids of the rules that cite a clause, or one above it, or
// one that asks the same. What is said to be left is judged only by rules that
// cite the clause itself.
func (c *coverer) citing(row clauseRow) []string {
	var ids []string
	for _, r := range c.rules {
		for _, cited := range c.cited(r) {
			if cited == row.Clause || cited == row.As || row.Left == "" && partOf(row.Clause, cited) {
				ids = append(ids, r.meta.ID)
				break
			}
		}
	}
	return ids
}

// cited returns the clauses of the document that a rule cites.
func (c *coverer) cited(r *rule) []string {
	var all []string
	for _, citation := range r.meta.Sources {
		if citation.Source == c.source.ID {
			all = append(all, Clauses(citation.Clause)...)
		}
	}
	return all
}

func (c *coverer) check(row clauseRow, judged []string) {
	switch {
	case row.Clause == "" || row.Asks == "":
		c.faults.add(c.file, 0, "clause %q needs a clause and what it asks", row.Clause)
	case row.Left != "" && !slices.Contains(verdict.Lefts(), row.Left):
		c.faults.add(c.file, 0, "clause %s is left as %q; use one of %v", row.Clause, row.Left, verdict.Lefts())
	case row.Left != "" && row.Left != verdict.LeftInPart && row.Left != verdict.LeftEmpty && row.Why == "":
		c.faults.add(c.file, 0, "clause %s is left and does not say why", row.Clause)
	case row.Left == "" && len(judged) == 0:
		c.faults.add(c.file, 0, "clause %s has neither a rule that judges it nor a reason why none does", row.Clause)
	case row.Left == verdict.LeftInPart && (len(judged) == 0 || row.Why == ""):
		c.faults.add(c.file, 0, "clause %s is left in part: a rule cites the clause itself, and why says what is left", row.Clause)
	case row.Left != "" && row.Left != verdict.LeftInPart && len(judged) > 0:
		c.faults.add(c.file, 0, "clause %s is left as %q, yet %s cites it", row.Clause, row.Left, judged[0])
	}
}

// strays finds citations of clauses that are not in the list.
func (c *coverer) strays() {
	for _, r := range c.rules {
		for _, cited := range c.cited(r) {
			known := func(row clauseRow) bool { return row.Clause == cited || partOf(row.Clause, cited) }
			if !slices.ContainsFunc(c.of.Clauses, known) {
				c.faults.add(r.file, 0, "cites %s of %s, which %s does not list", cited, c.source.ID, c.file)
			}
		}
	}
}

// partOf tells whether a clause is a part of another: 183.455(b)(1) of
// 183.455(b).
func partOf(clause, whole string) bool { return whole != "" && strings.HasPrefix(clause, whole+"(") }

// Clauses parts what a citation names: "183.380(a), (c)" is 183.380(a) and
// 183.380(c).
func Clauses(cited string) []string {
	var all []string
	section := ""
	for _, part := range strings.Split(cited, ", ") {
		if strings.HasPrefix(part, "(") && section != "" {
			part = section + part
		}
		section, _, _ = strings.Cut(part, "(")
		if part != "" {
			all = append(all, part)
		}
	}
	return all
}
