package rules_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/verdict"
	"driploop/rules"
)

func attack(line string) string {
	return yardHead + strings.Replace(yardBreach, "\tc.length_mm > 20000", line+"\tc.length_mm > 20000", 1)
}

// TestAttacksOnTheSandboxAreRefused reads rules that try to change what others
// see, or to take what an evaluation cannot give.
func TestAttacksOnTheSandboxAreRefused(t *testing.T) {
	for name, c := range map[string]struct{ text, want string }{
		"a mock of our rules":       {attack("\tcount(data.driploop.rules.protection.device_too_far.breach) == 0 with input as {}\n"), ""},
		"a mock of its own input":   {attack("\tcount(applies) == 0 with input as {}\n"), ""},
		"a mock of a function":      {attack("\tcount([]) == 1 with count as 1\n"), ""},
		"a print in a function":     {yardHead + "\nlong(x) if {\n\tprint(x)\n\tx > 5\n}\n" + attackOn("long(c.length_mm)"), `"print" says nothing here`},
		"a print":                   {attack("\tprint(id)\n"), `"print" says nothing here`},
		"a trace":                   {attack("\ttrace(id)\n"), "undefined function trace"},
		"a default of ours":         {yardHead + "\ndefault breach := set()\n" + yardBreach, ""},
		"a part in our package":     {yardHead + "\ndata.driploop.rules.protection.device_too_far.excludes contains \"us-federal\" if true\n" + yardBreach, ""},
		"a second package":          {yardHead + yardBreach + "\npackage driploop.rules.protection.device_too_far\n", ""},
		"a rule named input":        {yardHead + "\ninput := {}\n" + yardBreach, ""},
		"a rule named data":         {yardHead + "\ndata := {}\n" + yardBreach, ""},
		"data of the engine":        {attack("\tdata.driploop.binding.binds\n"), ""},
		"data of any name":          {attack("\tdata.secrets[_]\n"), ""},
		"all data":                  {attack("\twalk(data)\n"), ""},
		"a pattern that backtracks": {attack("\tregex.match(\"^(([a-z])+.)+[A-Z]([a-z])+$\", id)\n"), "undefined function regex.match"},
		"a pattern by another name": {attack("\tregex.find_n(\"(a*)*\", id, -1)\n"), "undefined function regex.find_n"},
		"a glob":                    {attack("\tglob.match(\"**\", [], id)\n"), "undefined function glob.match"},
		"a range of numbers":        {attack("\tcount(numbers.range(1, 1000000000)) > 0\n"), "undefined function numbers.range"},
		"a long repetition":         {attack("\tcount(strings.render_template(id, {})) > 0\n"), "undefined function"},
		"a replacement":             {attack("\treplace(id, \"a\", id) != \"\"\n"), "undefined function replace"},
		"a template of text":        {attack("\t$\"{id}{id}\" != \"\"\n"), ""},
		"base64":                    {attack("\tbase64.encode(id) != \"\"\n"), "undefined function base64.encode"},
		"a file":                    {attack("\topa.runtime().config\n"), "undefined function opa.runtime"},
		"a function of itself":      {yardHead + "\nf(x) := f(x)\n" + attackOn("f(1)"), "recurs"},
		"two functions in a ring":   {yardHead + "\nf(x) := g(x)\n\ng(x) := f(x)\n" + attackOn("f(1)"), "recurs"},
		"a rule of itself":          {yardHead + strings.Replace(yardBreach, "\tc.length_mm", "\tcount(breach) == 0\n\tc.length_mm", 1), "a rule looks at one subject at a time"},
		"an import of the future":   {strings.Replace(yardHead, "line_long\n", "line_long\n\nimport future.keywords\n", 1) + yardBreach, ""},
		"an old version of Rego":    {strings.Replace(yardHead, "line_long\n", "line_long\n\nimport rego.v1\n", 1) + yardBreach, ""},
		"a text of 10 MB":           {yardHead + "\nbig := \"" + strings.Repeat("x", 10<<20) + "\"\n" + yardBreach, "at most"},
		"an endless number":         {attack("\tc.length_mm > 1e999999999\n"), ""},
		"a number to multiply":      {attack("\t1e400000 * 1e400000 > c.length_mm\n"), ""},
		"a schema of its own":       {strings.Replace(yardHead, "schema.facts", "schema.other", 1) + yardBreach, ""},
		"a schema inline":           {strings.Replace(yardHead, "input: schema.facts", "input: {type: any}", 1) + yardBreach, ""},
	} {
		t.Run(name, func(t *testing.T) {
			begun := time.Now()
			_, err := rules.NewWith(yardFolder(c.text))
			if err == nil {
				t.Fatal("is taken")
			}
			says := err.Error()
			t.Logf("%v %.300s", time.Since(begun).Round(time.Millisecond), says)
			assert.Contains(t, says, c.want)
			assert.Contains(t, says, "house-rules/stowage/line_long.rego", "the message says where")
			assert.NotContains(t, says, "goroutine", "it is no fault of the program")
			assert.Less(t, len(says), 4096, "a message is for people")
		})
	}
}

func attackOn(line string) string {
	return strings.Replace(yardBreach, "\tc.length_mm", "\t"+line+"\n\tc.length_mm", 1)
}

// TestWhatLiesBesideRulesIsNoDataOfTheirs: data.json and other policies of a
// folder are not read, so that they cannot stand for anything.
func TestWhatLiesBesideRulesIsNoDataOfTheirs(t *testing.T) {
	files := fstest.MapFS{"stowage/line_long.rego": {Data: []byte(yardHead + yardBreach)}}
	alone, err := rules.NewWith(&rules.Folder{Path: "house-rules", Files: files})
	require.NoError(t, err)
	for name, text := range map[string]string{
		"data.json": `{"driploop": {"rules": {"protection": {"device_too_far": {"breach": []}}}, "binding": {"binds": {}}}}`,
		"data.yaml": "driploop: {rules: {}}\n", "stowage/data.json": `{"driploop": 1}`, ".manifest": `{"roots": [""]}`,
		"practice.yaml": "sets: []\n", "stowage/deeper/more.rego": "package driploop.rules.protection.device_too_far\n",
	} {
		files[name] = &fstest.MapFile{Data: []byte(text)}
	}
	beside, err := rules.NewWith(&rules.Folder{Path: "house-rules", Files: files})
	require.NoError(t, err)
	r, doc := yardRecord(t)
	want, err := alone.Judge(r, doc, exampleDay)
	require.NoError(t, err)
	got, err := beside.Judge(r, doc, exampleDay)
	require.NoError(t, err)
	assert.Equal(t, want.Counts, got.Counts)
	for i := range want.Verdicts {
		assert.Equal(t, want.Verdicts[i].Outcome, got.Verdicts[i].Outcome, want.Verdicts[i].Rule.ID)
	}
}

// TestWhatARuleTakesIsBounded judges a record by rules that say too much, or that
// fail on one record only. What is ours is judged as it is without them.
func TestWhatARuleTakesIsBounded(t *testing.T) {
	if testing.Short() {
		t.Skip("waits for bounds")
	}
	r, doc := yardRecord(t)
	ours, err := rules.New()
	require.NoError(t, err)
	want, err := ours.Judge(r, doc, exampleDay)
	require.NoError(t, err)
	long := strings.Repeat("x", 100<<10)
	var power strings.Builder
	power.WriteString("\nn := {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19}\n\nmany contains x if {")
	for i := range 9 {
		fmt.Fprintf(&power, "\n\tsome n%d in n", i)
	}
	power.WriteString("\n\tx := [n0, n1, n2, n3, n4, n5, n6, n7, n8]\n}\n")
	for name, text := range map[string]string{
		"a text that fills the page":  yardHead + "\nbig := \"" + long + "\"\n" + strings.Replace(yardBreach, `{"length_mm": c.length_mm}`, `{"length_mm": c.length_mm, "length": big}`, 1),
		"a subject that is not there": yardHead + strings.Replace(yardBreach, `"subject": id`, `"subject": "conductors.none"`, 1),
		"a subject of ours":           yardHead + strings.Replace(yardBreach, `"subject": id`, `"subject": "house"`, 1),
		"a set of ours":               yardHead + strings.Replace(yardBreach, `"subject": id,`, `"subject": id, "set": "us-federal",`, 1),
		"a severity of its own":       yardHead + strings.Replace(yardBreach, `"subject": id,`, `"subject": id, "severity": "danger",`, 1),
		"a loop on one record":        yardHead + power.String() + strings.Replace(yardBreach, "\tc.length_mm > 20000\n", "\tid == \"P1\"\n\tc.length_mm > 20000\n\tcount(many) > 5\n", 1),
	} {
		t.Run(name, func(t *testing.T) {
			engine, err := rules.NewWith(yardFolder(text))
			if err != nil {
				t.Logf("refused when read: %.300s", err)
				assert.Contains(t, err.Error(), "house-rules/stowage/line_long.rego")
				return
			}
			begun := time.Now()
			got, err := engine.Judge(r, doc, exampleDay)
			t.Logf("%v: %.300v", time.Since(begun).Round(time.Millisecond), err)
			var failed *rules.YardError
			if err != nil {
				require.True(t, errors.As(err, &failed), "%v", err)
			}
			kept := map[string]verdict.Outcome{}
			for _, v := range got.Verdicts {
				if v.Rule.ID == "stowage/line-long" {
					assert.Less(t, len(fmt.Sprint(v.Figures, v.Missing)), 3000, "what it says fits a page")
					assert.NotEqual(t, verdict.NotApplicable, v.Outcome)
					assert.LessOrEqual(t, v.Severity, verdict.Caution, "a rule of the yard is no graver than it says")
					assert.Contains(t, v.Subject, "conductors.")
					continue
				}
				kept[v.Rule.ID+" "+v.Subject] = v.Outcome
			}
			for _, v := range want.Verdicts {
				assert.Equal(t, v.Outcome, kept[v.Rule.ID+" "+v.Subject], "%s of ours at %s", v.Rule.ID, v.Subject)
			}
		})
	}
}
