// Package facts joins a record and its solved circuit into the one document
// that rules read. A rule looks at one subject at a time and finds all that it
// compares in that subject, in "vessel" or in "job": joins, sums, products and
// ratios are made here, so that a rule is a comparison and nothing more.
//
// A fact whose value is not known is absent, never zero, and stands in the
// subject's "open" with what is missing. The last part of a fact's name is the
// unit of its number: length_mm, rating_a.
package facts

// Format names the version of the document.
const Format = "driploop.facts/1"

// Document is the facts of one record. Collections are keyed by subject id.
type Document struct {
	Format   string   `json:"format" jsonschema:"enum=driploop.facts/1"`
	Practice []string `json:"practice"`

	Vessel *Vessel `json:"vessel"`
	Job    *Job    `json:"job"`

	Conductors   map[string]*Conductor   `json:"conductors"`
	Runs         map[string]*Run         `json:"runs"`
	Segments     map[string]*Segment     `json:"segments"`
	Ends         map[string]*End         `json:"ends"`
	Studs        map[string]*Stud        `json:"studs"`
	Devices      map[string]*Device      `json:"devices"`
	Switches     map[string]*Switch      `json:"switches"`
	Batteries    map[string]*Battery     `json:"batteries"`
	Chargers     map[string]*Charger     `json:"chargers"`
	Loads        map[string]*Load        `json:"loads"`
	Components   map[string]*Component   `json:"components"`
	Contacts     map[string]*Contact     `json:"contacts"`
	Penetrations map[string]*Penetration `json:"penetrations"`
	Tests        map[string]*Test        `json:"tests"`
	Waivers      map[string]*Waiver      `json:"waivers"`
}

// Subject is what every subject carries beside its facts.
type Subject struct {
	// Path is the place in the record that a verdict points at.
	Path string `json:"path"`
	// Key tells an entry of a list from its like by what it says, not by where in
	// the list it stands. Empty for what has a name of its own.
	Key string `json:"-"`
	// Open lists the facts that are not known and what is missing for each.
	Open Open `json:"open,omitzero"`
}

// Base returns the subject itself; it makes every fact type a subject.
func (s *Subject) Base() *Subject { return s }
