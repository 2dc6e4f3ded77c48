// Package draft writes a new installation record from a few answers: the parts
// that such a job has, sizes that the circuit asks for, and every entry that
// the rules will ask for, marked unknown until somebody has looked.
package draft

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"driploop/model/quantity"
	"driploop/model/record"
)

// Question is one thing to ask before a record is begun.
type Question struct {
	Key     string
	Asks    string
	Example string
	Words   []string // the only answers, if there are few
	Default string   // taken if nothing is said; empty if it must be answered

	dim quantity.Dimension // of an answer with a unit
}

// Answers are the answers by key; see Questions.
type Answers map[string]string

// Questions returns what is asked, in the order of asking.
func Questions() []Question {
	spaces := wordsOf("spaces.any.kind")
	return []Question{
		{Key: "kind", Asks: "What kind of job is it?", Words: kinds(), Example: "windlass"},
		{Key: "boat", Asks: "What is the boat's name?", Example: "Marigold"},
		{Key: "voltage", Asks: "What is the nominal voltage?", Example: "12 V", dim: quantity.Voltage},
		{Key: "hull", Asks: "What is the hull built of?", Words: wordsOf("vessel.hull"), Example: "frp"},
		{Key: "propulsion", Asks: "What drives her?", Words: wordsOf("vessel.propulsion"), Example: "diesel-inboard"},
		{Key: "current", Asks: "What current does the new equipment draw or give, running?", Example: "35 A", dim: quantity.Current},
		{Key: "batteries", Asks: "Where do the batteries stand?", Words: spaces, Default: "locker", Example: "locker"},
		{Key: "load", Asks: "Where does the new equipment stand?", Words: spaces, Default: "locker", Example: "open-deck"},
		{Key: "length", Asks: "How long is the cable run, one way, roughly?", Example: "25 ft", dim: quantity.Length},
		{Key: "holes", Asks: "How many holes go through decks or bulkheads?", Example: "1", Default: "1"},
		{Key: "number", Asks: "What is the number of the job?", Example: "HL-2207", Default: unknown},
		{Key: "practice", Asks: "Which practice sets is it judged by?", Example: "us-federal, workmanship", Default: "us-federal, us-voluntary, workmanship"},
	}
}

// most bounds the holes of one job.
const most = 20

// Check returns what is wrong with an answer.
func (q Question) Check(answer string) error {
	answer = strings.TrimSpace(answer)
	switch {
	case answer == "" && q.Default == "":
		return fmt.Errorf("not answered; %s For example %q", q.Asks, q.Example)
	case answer == "":
		return nil
	case len(q.Words) > 0 && !slices.Contains(q.Words, answer):
		return fmt.Errorf("%q is none of %s", answer, strings.Join(q.Words, ", "))
	case q.dim != quantity.None:
		v, err := quantity.Parse(answer, q.dim)
		if err != nil {
			return err
		}
		if v.Base <= 0 {
			return fmt.Errorf("%q is not above zero", answer)
		}
	case q.Key == "holes":
		if n, err := strconv.Atoi(answer); err != nil || n < 0 || n > most {
			return fmt.Errorf("%q is not a number from 0 to %d", answer, most)
		}
	case q.Key == "practice":
		sets := wordsOf("practice")
		for _, set := range words(answer) {
			if !slices.Contains(sets, set) {
				return fmt.Errorf("%q is none of %s", set, strings.Join(sets, ", "))
			}
		}
	}
	return nil
}

// words cuts a list as people write it.
func words(list string) []string {
	return strings.FieldsFunc(list, func(r rune) bool { return strings.ContainsRune(", []", r) })
}

// wordsOf lists the words that the format allows for an entry.
func wordsOf(path string) []string {
	f, _ := record.Describe(path, func(string) string { return "" })
	return f.Words
}

// job is what the answers come to.
type job struct {
	plan
	answers  Answers // checked, defaults filled in
	current  quantity.Quantity
	length   quantity.Quantity
	metric   bool
	holes    int
	practice []string
}

// read checks all answers. The error names every one that cannot be used.
func (a Answers) read() (job, error) {
	j := job{answers: Answers{}}
	var wrong []string
	asked := map[string]Question{}
	for _, q := range Questions() {
		asked[q.Key] = q
		v := strings.TrimSpace(a[q.Key])
		if err := q.Check(v); err != nil {
			wrong = append(wrong, q.Key+": "+err.Error())
		}
		if v == "" {
			v = q.Default
		}
		j.answers[q.Key] = v
	}
	for key := range a {
		if _, ok := asked[key]; !ok {
			wrong = append(wrong, key+": is not asked for; the answers are "+strings.Join(Keys(), ", "))
		}
	}
	if len(wrong) > 0 {
		slices.Sort(wrong)
		return j, fmt.Errorf("the answers cannot be used:\n  %s", strings.Join(wrong, "\n  "))
	}
	// What was checked parses.
	j.current, _ = quantity.Parse(j.answers["current"], quantity.Current)
	j.length, _ = quantity.Parse(j.answers["length"], quantity.Length)
	j.metric = strings.HasSuffix(j.answers["length"], "m")
	j.holes, _ = strconv.Atoi(j.answers["holes"])
	j.practice = words(j.answers["practice"])
	j.plan = plans()[j.answers["kind"]]
	return j, nil
}

// Keys lists the keys of all questions.
func Keys() []string {
	var keys []string
	for _, q := range Questions() {
		keys = append(keys, q.Key)
	}
	return keys
}
