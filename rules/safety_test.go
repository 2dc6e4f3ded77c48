package rules

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// plain is a rule whose body and lists a safety test fills in.
const plain = `# METADATA
# title: Made up
# description: Made up for tests.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/made-up
#   severity: notice
#   subject: conductors
#   applies: every conductor
#   needs: [NEEDS]
#   decides: [DECIDES]
#   says: "wrong"
#   remedy: "Right it."
#   sources:
#     - {set: workmanship, source: common-practice, clause: "", asks: "right", trust: practice}
#   since: 0.1.0
package driploop.rules.protection.made_up

`

func withBody(needs, decides, body string) string {
	return strings.NewReplacer("NEEDS", needs, "DECIDES", decides).Replace(plain) + body
}

// bodyLine is the line of the first line of a body.
const bodyLine = "protection/made_up.rego:20: "

func TestSafetyRefuses(t *testing.T) {
	for name, c := range map[string]struct{ needs, decides, body, want string }{
		"a fact that may be missing": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.length_mm > 1\n}",
			want: "22: breach reads length_mm, which may be missing; list it in needs, asks or decides",
		},
		"the same in a figure": {
			body: "breach contains {\"subject\": id, \"figures\": {\"length_mm\": c.length_mm}} if {\n\tsome id, c in input.conductors\n\tc.role == \"positive\"\n}",
			want: bodyLine + "breach reads length_mm",
		},
		"the same by its key": {
			body: "breach contains {\"subject\": id} if {\n\tsome id\n\tinput.conductors[id].length_mm > 1\n}",
			want: "22: breach reads length_mm",
		},
		"the same by a name": {
			body: "breach contains {\"subject\": id} if {\n\tall := input.conductors\n\tsome id\n\tc := all[id]\n\tlength := c.length_mm\n\tlength > 1\n}",
			want: "24: breach reads length_mm",
		},
		"the same by unification": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c\n\tinput.conductors[id] = c\n\tc.length_mm > 1\n}",
			want: "23: breach reads length_mm",
		},
		"the same as an index": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tbad[c.size]\n}\n\nbad := {\"18 AWG\": true}",
			want: "22: breach reads size",
		},
		"the same as an element": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tsome size in [c.size]\n\tsize == \"18 AWG\"\n}",
			want: "22: breach reads size",
		},
		"the same in a helper": {
			body: "breach contains {\"subject\": id} if {\n\tsome id in long\n}\n\nlong contains id if {\n\tsome id, c in input.conductors\n\tc.length_mm > 1\n}",
			want: "26: breach reads length_mm",
		},
		"the same in a function": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\twrong(c.role)\n}\n\nwrong(role) if {\n\trole == \"positive\"\n\tinput.vessel.petrol\n}",
			want: "27: breach reads vessel.petrol",
		},
		"the same of the job": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n\tinput.job.kind == \"lights\"\n}",
			want: "23: breach reads job.kind",
		},
		"a needed fact that decides": {
			needs: "length_mm",
			body:  "applies contains id if {\n\tsome id, c in input.conductors\n\tc.length_mm > 1\n}\n\nbreach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.length_mm > 2\n}",
			want:  "22: applies reads length_mm, which may be missing; list it in decides or asks",
		},
		"a deciding fact that nothing reads": {
			decides: "size",
			body:    "applies contains id if some id, _ in input.conductors\n\nbreach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n}",
			want:    "12: the metadata lists size, which the rule does not read",
		},
		"a missing fact under not": {
			needs: "length_mm",
			body:  "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tnot c.length_mm > 1\n}",
			want:  "22: breach could hold because length_mm is missing",
		},
		"a missing fact under not in a helper": {
			needs: "length_mm",
			body:  "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n\tnot long[id]\n}\n\nlong[id] if {\n\tsome id, c in input.conductors\n\tc.length_mm > 1\n}",
			want:  "28: breach could hold because length_mm is missing",
		},
		"a missing fact in a comprehension": {
			needs: "length_mm",
			body:  "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tcount([1 | c.length_mm > 1]) == 0\n}",
			want:  "22: breach could hold because length_mm is missing",
		},
		"a missing fact before else": {
			needs: "length_mm",
			body:  "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n\tlength(id) > 1\n}\n\nlength(id) := input.conductors[id].length_mm if {\n\tinput.conductors[id].length_mm > 1\n} else := 7",
			want:  "could hold because length_mm is missing",
		},
		"a missing fact before a default": {
			needs: "vessel.petrol",
			body:  "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n\tpetrol == false\n}\n\ndefault petrol := false\n\npetrol if input.vessel.petrol == true",
			want:  "28: breach could hold because vessel.petrol is missing",
		},
		"another collection": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n\tsome other, l in input.loads\n\tl.kind == c.role\n\tother != id\n}",
			want: "23: a rule on conductors reads no loads",
		},
		"two subjects at once": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tsome other, d in input.conductors\n\tid != other\n\tc.role == d.role\n}",
			want: bodyLine + "a rule looks at one subject at a time",
		},
		"two subjects without ids": {
			needs: "length_mm",
			body:  "breach contains {\"subject\": \"x\"} if {\n\tsome c in input.conductors\n\tsome d in input.conductors\n\tc.length_mm > d.length_mm\n}",
			want:  bodyLine + "breach picks from the conductors and is no set of their ids",
		},
		"how many subjects there are": {
			body: "breach contains {\"subject\": id} if {\n\tsome id in fed\n\tcount(fed) > 1\n}\n\nfed contains id if {\n\tsome id, c in input.conductors\n\tc.fed\n}",
			want: "22: fed speaks of several conductors",
		},
		"whether another subject is in a set": {
			needs: "size",
			body:  "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.size in fed\n}\n\nfed contains id if {\n\tsome id, c in input.conductors\n\tc.fed\n}",
			want:  "22: fed speaks of several conductors",
		},
		"two subjects by a set": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tsome other in fed\n\tother != id\n}\n\nfed contains id if {\n\tsome id, c in input.conductors\n\tc.fed\n}",
			want: bodyLine + "a rule looks at one subject at a time; here conductors are picked by different keys",
		},
		"facts of others in a set": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.role in roles\n}\n\nroles contains c.role if {\n\tsome id, c in input.conductors\n\tc.fed\n}",
			want: "25: roles picks from the conductors and is no set of their ids",
		},
		"any subject": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n\tany_bare\n}\n\nany_bare if {\n\tsome id, c in input.conductors\n\tc.in_housing\n}",
			want: "23: any_bare speaks of several conductors",
		},
		"another subject by a function": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tfed(c.from)\n}\n\nfed(id) if input.conductors[id].fed",
			want: "22: fed speaks of several conductors",
		},
		"all subjects in a comprehension": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n\tcount([1 | some id, d in input.conductors; d.fed]) > 1\n}",
			want: "23: a rule looks at one subject at a time; it goes over no conductors within another condition",
		},
		"a set of subjects in a comprehension": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n\tcount([1 | some id in fed]) > 1\n}\n\nfed contains id if {\n\tsome id, c in input.conductors\n\tc.fed\n}",
			want: "23: fed speaks of several conductors",
		},
		"every subject": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n\tevery id, d in input.conductors {\n\t\td.fed\n\t}\n}",
			want: "23: a rule looks at one subject at a time",
		},
		"a subject by its name": {
			body: "breach contains {\"subject\": \"P1\"} if {\n\tsome id, c in input.conductors\n\tc.fed\n}",
			want: bodyLine + "breach picks from the conductors and is no set of their ids",
		},
		"no subject": {
			body: "breach contains {\"subject\": \"P1\"} if input.vessel.system_v > 1",
			want: bodyLine + "breach names none of the conductors",
		},
		"one name for two things": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n\tevery c in input {\n\t\tc != 1\n\t}\n\tv := input.vessel\n\tv.system_v > 1\n\tv = c\n}",
			want: "stands for two things",
		},
		"what is open": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.open.size\n}",
			want: "22: what is open is the engine's to judge; no rule reads it",
		},
		"a fact by a computed name": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tsome name in [\"size\", \"class\"]\n\tc[name] == \"x\"\n}",
			want: "23: a fact is read by its name, not by name",
		},
		"any fact": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc[_] == \"x\"\n}",
			want: "22: a fact is read by its name",
		},
		"the subject in a function": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tlong(c)\n}\n\nlong(c) if c.length_mm > 1",
			want: "22: c is used whole",
		},
		"the subject in object.get": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tobject.get(c, \"length_mm\", 7) > 1\n}",
			want: "22: c is used whole",
		},
		"the subject compared": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc != {\"role\": \"positive\"}\n}",
			want: "22: c is used whole",
		},
		"the subject matched with a pattern": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\t[x] = [c]\n\tx.length_mm > 1\n}",
			want: "22: c is used whole",
		},
		"the subject as a finding": {
			body: "breach contains {\"subject\": id, \"figures\": c} if {\n\tsome id, c in input.conductors\n\tc.fed\n}",
			want: bodyLine + "c is used whole",
		},
		"a pattern for the subject": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, {\"size\": \"18 AWG\", \"path\": _} in input.conductors\n}",
			want: "21: input.conductors is used whole",
		},
		"the elements of a subject": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tsome x in c\n\tx == \"positive\"\n}",
			want: "22: c is used whole",
		},
		"the collection counted": {
			body: "breach contains {\"subject\": \"P1\"} if {\n\tcount(input.conductors) > 2\n}",
			want: "21: input.conductors is used whole",
		},
		"the whole input": {
			body: "breach contains {\"subject\": \"P1\"} if {\n\tinput == {}\n}",
			want: "21: input is used whole",
		},
		"practice sets": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n\t\"uk\" in input.practice\n}",
			want: "23: rules do not read input.practice",
		},
		"another rule": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n\tdata.driploop.binding.binds[\"33-cfr-183\"]\n}",
			want: "23: data.driploop.binding.binds[\"33-cfr-183\"] is outside the rule's package",
		},
		"an import": {
			body: "import data.driploop.binding\n\nbreach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n\tbinding.binds[c.role]\n}",
			want: bodyLine + "a rule imports nothing",
		},
		"with": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n\tpetrol with input.vessel.petrol as true\n}\n\npetrol if input.vessel.system_v > 1",
			want: "23: a rule reads the facts as they are",
		},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := newEngine(folder(t, map[string]string{soundFile: withBody(c.needs, c.decides, c.body)}))
			require.Error(t, err)
			assert.Contains(t, byLine(err), c.want)
		})
	}
}

func TestSafetyLetsPass(t *testing.T) {
	for name, c := range map[string]struct{ needs, decides, body string }{
		"not over a fact that is always there": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tnot c.role == \"bonding\"\n\tnot c.fed\n}",
		},
		"not over a value found before": {
			needs: "size",
			body:  "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tsize := c.size\n\tnot size in {\"18 AWG\"}\n}",
		},
		"no such value": {
			needs: "size",
			body:  "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.size != \"18 AWG\"\n}",
		},
		"a decided fact in applies and breach": {
			decides: "ungrounded",
			body:    "applies contains id if {\n\tsome id, c in input.conductors\n\tc.ungrounded == true\n}\n\nbreach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.ungrounded == true\n\tc.fed\n}",
		},
		"whether it is in a set": {
			needs: "size",
			body:  "breach contains {\"subject\": id} if {\n\tsome id in fed\n\tnot id in thick\n\tinput.conductors[id].size == \"18 AWG\"\n}\n\nfed contains id if {\n\tsome id, c in input.conductors\n\tc.fed\n}\n\nthick contains id if {\n\tsome id, c in input.conductors\n\tc.role == \"bonding\"\n}",
		},
		"whether it is in a set with a word": {
			body: "breach contains {\"subject\": id} if {\n\tsome id, c in input.conductors\n\tc.fed\n\t{\"subject\": id, \"role\": c.role} in known\n}\n\nknown contains {\"subject\": id, \"role\": \"positive\"} if {\n\tsome id, c in input.conductors\n\tc.fed\n}",
		},
		"facts by key": {
			needs: "size",
			body:  "breach contains {\"subject\": id} if {\n\tsome id\n\tinput.conductors[id].size == \"18 AWG\"\n\tinput.conductors[id].role == \"positive\"\n}",
		},
		"the same in brackets": {
			needs: "size",
			body:  "breach contains {\"subject\": id} if {\n\tsome id\n\tinput[\"conductors\"][id][\"size\"] == \"18 AWG\"\n}",
		},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := newEngine(folder(t, map[string]string{soundFile: withBody(c.needs, c.decides, c.body)}))
			require.NoError(t, err)
		})
	}
}

// columns are those of places in errors.
var columns = regexp.MustCompile(`(\.rego:\d+):\d+: `)

// byLine is an error with its places by line alone: a test names the line and
// leaves the column to the tests of places.
func byLine(err error) string { return columns.ReplaceAllString(err.Error(), "$1: ") }
