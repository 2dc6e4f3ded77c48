package survey

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"driploop/model/verdict"
	"driploop/reports"
)

// Coverage says what was judged, by what, and what no record can show.
type Coverage struct {
	Sets      []Set // in force
	Topics    []Topic
	Documents []Document
	Limits    []string
	Silent    []string // rules in force that found nothing in the record to judge
}

// Topic holds the rules of one topic that had something to judge.
type Topic struct {
	Name  string
	Rules []RuleCover
}

// RuleCover is what came of one rule.
type RuleCover struct {
	ID, Title string
	Counts    verdict.Counts
	Judged    int      // subjects that it applies to
	Documents []string // ids of those that it rests on here
}

// Document is one that a rule in force rests on.
type Document struct {
	ID, Title, Edition, Issuer string
	Force                      string
	Rules                      int
	Trust                      string // how well its clauses were checked

	trusts map[verdict.Trust]int
}

// checked says how many clauses of a document were checked how well.
func (d *Document) checked() string {
	var parts []string
	for _, t := range []verdict.Trust{verdict.Read, verdict.ReadPart, verdict.Secondary, verdict.Memory, verdict.Computed, verdict.NoSource} {
		words := reports.TrustText(t)
		if t == verdict.Read {
			words = "read"
		}
		if n := d.trusts[t]; n > 0 {
			parts = append(parts, strconv.Itoa(n)+" "+words)
		}
	}
	return strings.Join(parts, "; ")
}

func (b *builder) coverage() Coverage {
	c := Coverage{Limits: beyond()}
	in := map[string]bool{}
	for _, id := range b.Judged.Practice {
		in[id] = true
		i := slices.IndexFunc(b.Practice.Sets, func(s Set) bool { return s.ID == id })
		if i >= 0 {
			c.Sets = append(c.Sets, b.Practice.Sets[i])
		} else {
			c.Sets = append(c.Sets, Set{ID: reports.Plain(id), Title: reports.Plain(id)})
		}
	}
	rules := slices.Clone(b.Practice.Rules)
	held := map[string]verdict.Counts{}
	for i := range b.Judged.Verdicts {
		v := &b.Judged.Verdicts[i]
		if held[v.Rule.ID] == nil {
			held[v.Rule.ID] = verdict.Counts{}
			if !slices.ContainsFunc(rules, func(r *verdict.Rule) bool { return r.ID == v.Rule.ID }) {
				rules = append(rules, v.Rule) // of the yard's settings
			}
		}
		held[v.Rule.ID][v.Outcome]++
	}
	cited := map[string]*Document{}
	for _, r := range rules {
		if held[r.ID] == nil && !slices.ContainsFunc(r.Sources, func(s verdict.Citation) bool { return in[s.Set] }) {
			continue
		}
		cover := RuleCover{ID: r.ID, Title: reports.Flow(r.Title), Counts: held[r.ID]}
		for outcome, n := range held[r.ID] {
			if outcome != verdict.NotApplicable {
				cover.Judged += n
			}
		}
		if cover.Judged == 0 {
			c.Silent = append(c.Silent, r.ID)
			continue
		}
		for _, s := range r.Sources {
			if in[s.Set] && !slices.Contains(cover.Documents, s.Source) {
				cover.Documents = append(cover.Documents, s.Source)
				b.cite(cited, s).Rules++
			} else if in[s.Set] {
				b.cite(cited, s)
			}
		}
		c.add(cover)
	}
	c.Documents = listed(cited, b.Practice.Documents)
	return c
}

// listed puts documents in the order of the register, those that it does not
// have last.
func listed(cited map[string]*Document, register []*verdict.Source) []Document {
	var all []Document
	add := func(id string) {
		if doc := cited[id]; doc != nil {
			doc.Trust = doc.checked()
			all = append(all, *doc)
			delete(cited, id)
		}
	}
	for _, d := range register {
		add(d.ID)
	}
	for _, id := range slices.Sorted(maps.Keys(cited)) {
		add(id)
	}
	return all
}

func (c *Coverage) add(cover RuleCover) {
	name, _, _ := strings.Cut(cover.ID, "/")
	if n := len(c.Topics); n == 0 || c.Topics[n-1].Name != name {
		c.Topics = append(c.Topics, Topic{Name: name})
	}
	last := &c.Topics[len(c.Topics)-1]
	last.Rules = append(last.Rules, cover)
}

// cite notes that a document is cited.
func (b *builder) cite(cited map[string]*Document, s verdict.Citation) *Document {
	doc := cited[s.Source]
	if doc == nil {
		doc = &Document{ID: s.Source, Title: s.Source, trusts: map[verdict.Trust]int{}}
		if i := slices.IndexFunc(b.Practice.Documents, func(d *verdict.Source) bool { return d.ID == s.Source }); i >= 0 {
			d := b.Practice.Documents[i]
			doc.Title, doc.Edition, doc.Issuer, doc.Force = reports.Flow(d.Title), reports.Flow(d.Edition), reports.Flow(d.Issuer), string(d.Force)
		}
		cited[s.Source] = doc
	}
	doc.trusts[s.Trust]++
	return doc
}

// beyond lists what no record can show.
func beyond() []string {
	return []string{
		"Whether the boat is as the record says. Nothing here was seen, measured or pulled by driploop.",
		"What has changed since: corrosion, chafe, loose fasteners, water in a core or a connector, later work by others.",
		"The quality of a crimp, a seal or a bedding beyond what is written of it, and damage under insulation.",
		"Equipment inside: what makers build into batteries, chargers, motors and panels.",
		"Alternating current, radio, lightning protection, and engine wiring that the maker fitted.",
		"What the documents ask beyond the rules listed here, and what local law, class or insurer asks beyond the documents.",
	}
}
