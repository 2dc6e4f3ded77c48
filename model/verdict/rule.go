package verdict

// Force is the authority of a source.
type Force string

// The forces, strongest first.
const (
	Law      Force = "law"
	Standard Force = "standard"
	Handbook Force = "handbook"
	Practice Force = "practice" // common practice, no source
)

// Trust tells how well a figure of a source has been checked.
type Trust string

// The trusts.
const (
	Read      Trust = "read"       // the text of the clause was read, in the edition named
	ReadPart  Trust = "read-part"  // only part of the clause was read
	Secondary Trust = "secondary"  // reported by a secondary source
	Memory    Trust = "unverified" // from memory, unverified
	Computed  Trust = "computed"   // follows by arithmetic or physics from the record
	NoSource  Trust = "practice"   // common practice, no source
)

// Source is an entry of the register of sources.
type Source struct {
	ID      string `json:"id"`
	Title   string `json:"title"`
	Edition string `json:"edition"`
	Issuer  string `json:"issuer"`
	Force   Force  `json:"force"`
	Scope   string `json:"scope,omitempty"` // whom it binds, in words
}

// Citation is one clause that a rule rests on within a practice set.
type Citation struct {
	Set    string `json:"set"`    // practice set that brings the clause
	Source string `json:"source"` // id in the register
	Clause string `json:"clause"` // clause, table or page; empty for common practice
	Asks   string `json:"asks"`   // what the clause asks, in our words
	Trust  Trust  `json:"trust"`
	// Needs lists facts without which only this clause is undecided.
	Needs []string `json:"needs,omitempty"`
}

// Rule describes one rule. All that a reader sees of a rule comes from here.
type Rule struct {
	ID       string   `json:"id"` // topic/fault
	Title    string   `json:"title"`
	Why      string   `json:"why"` // what could happen
	Severity Severity `json:"severity"`
	Subject  string   `json:"subject"`           // collection of facts that it judges
	Applies  string   `json:"applies"`           // to which subjects, in words
	Needs    []string `json:"needs"`             // facts without which it is undecided
	Asks     []string `json:"asks,omitempty"`    // facts it needs for some subjects only
	Decides  []string `json:"decides,omitempty"` // facts that decide whether it applies
	Says     string   `json:"says"`              // the finding, with {figures}
	Remedy   string   `json:"remedy"`
	// Mends are changes of the record that may clear a breach: a larger "size"
	// of the conductors, another "rating" of the device, its "place", or an entry
	// of the subject with what it would say, such as "support: {support}" with
	// the limit. Work on board goes before all but the first two.
	Mends   []string   `json:"mends,omitempty"`
	Sources []Citation `json:"sources"`
	Related []string   `json:"related,omitempty"`
	Since   string     `json:"since"`
}

// YardSet is the practice set of what a yard asks by itself.
const YardSet = "yard"

// OfYard tells whether nothing but the yard stands behind a rule.
func (r *Rule) OfYard() bool {
	sets := r.Sets()
	return len(sets) == 1 && sets[0] == YardSet
}

// Sets returns the practice sets that bring the rule, each once, in the order
// of its citations.
func (r *Rule) Sets() []string {
	var sets []string
	seen := map[string]bool{}
	for _, c := range r.Sources {
		if !seen[c.Set] {
			seen[c.Set] = true
			sets = append(sets, c.Set)
		}
	}
	return sets
}
