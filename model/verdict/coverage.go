package verdict

// Coverage lists the clauses of a document, each with the rules that judge it
// or why none does.
type Coverage struct {
	Source  *Source  `json:"source"`
	Covers  string   `json:"covers"` // which clauses are listed, in words
	Clauses []Clause `json:"clauses"`
}

// Clause is one clause of a document.
type Clause struct {
	Clause string   `json:"clause"`
	Asks   string   `json:"asks"`           // in our words
	Rules  []string `json:"rules"`          // ids of those that judge it
	Left   Left     `json:"left,omitempty"` // why no rule does, or not the whole
	Why    string   `json:"why,omitempty"`  // the same in words
}

// Left is the kind of reason why no rule judges a clause.
type Left string

// The reasons.
const (
	LeftScope   Left = "scope"   // it says whom the text binds; a verdict says so
	LeftEmpty   Left = "empty"   // it is reserved and has no text
	LeftTerm    Left = "term"    // it defines a word
	LeftOutside Left = "outside" // it is not about an electrical installation under 50 V
	LeftBeyond  Left = "beyond"  // the record of a job does not tell; a look, a test or another paper does
	LeftOpen    Left = "open"    // a record could tell; no rule does yet
	LeftInPart  Left = "in-part" // rules judge it, but not all that it asks
)

// Lefts returns all reasons, in the order that they are counted.
func Lefts() []Left {
	return []Left{LeftInPart, LeftScope, LeftEmpty, LeftTerm, LeftOutside, LeftBeyond, LeftOpen}
}
