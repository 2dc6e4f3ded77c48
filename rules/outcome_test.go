package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/facts"
	"driploop/model/figure"
	"driploop/model/quantity"
	"driploop/model/record"
	"driploop/model/verdict"
)

// devices returns a document of fuses with the given facts.
func devices(of map[string]*facts.Device, petrol *bool, practice ...string) *facts.Document {
	for id, d := range of {
		d.Path, d.Kind = "components."+id, "fuse"
	}
	return &facts.Document{
		Format: facts.Format, Practice: practice, Devices: of,
		Vessel: &facts.Vessel{Subject: facts.Subject{Path: "vessel"}, Petrol: petrol},
		Job:    &facts.Job{Subject: facts.Subject{Path: "job"}},
	}
}

func ptr[T any](v T) *T { return &v }

// judge judges by the sound rule of the tests and returns the verdicts by
// subject.
func judge(t *testing.T, engine *Engine, doc *facts.Document, r *record.Record) map[string]verdict.Verdict {
	t.Helper()
	result, err := engine.Judge(r, doc, testDay)
	require.NoError(t, err)
	assert.Equal(t, len(result.Verdicts), result.Counts.Total())
	all := map[string]verdict.Verdict{}
	for _, v := range result.Verdicts {
		all[v.Subject] = v
	}
	return all
}

func soundEngine(t *testing.T) *Engine {
	t.Helper()
	engine, err := newEngine(folder(t, map[string]string{soundFile: sound}))
	require.NoError(t, err)
	return engine
}

// The sound rule: us-federal asks for 32 V if a petrol engine is aboard;
// workmanship lets no fuse of 40 V or more carry over 100 A.
func TestOutcomes(t *testing.T) {
	engine := soundEngine(t)
	yes, no := ptr(true), ptr(false)
	for name, c := range map[string]struct {
		device   facts.Device
		petrol   *bool
		practice []string
		want     verdict.Outcome
		missing  []string
	}{
		"met":                              {facts.Device{RatedV: ptr(32.0)}, yes, []string{"us-federal"}, verdict.Met, nil},
		"breach":                           {facts.Device{RatedV: ptr(31.0)}, yes, []string{"us-federal"}, verdict.Breach, nil},
		"does not apply":                   {facts.Device{RatedV: ptr(12.0)}, no, []string{"us-federal"}, verdict.NotApplicable, nil},
		"no set in force":                  {facts.Device{RatedV: ptr(12.0)}, yes, []string{"uk", "eu"}, verdict.NotApplicable, nil},
		"no practice":                      {facts.Device{RatedV: ptr(12.0)}, yes, nil, verdict.NotApplicable, nil},
		"deciding fact missing":            {facts.Device{RatedV: ptr(12.0)}, nil, []string{"us-federal"}, verdict.Undecided, []string{"vessel.petrol"}},
		"deciding fact of another set":     {facts.Device{RatedV: ptr(12.0)}, nil, []string{"workmanship"}, verdict.Met, nil},
		"needed fact missing":              {facts.Device{}, yes, []string{"us-federal"}, verdict.Undecided, []string{"components.fuse.rated_v"}},
		"needed fact where it is no use":   {facts.Device{}, no, []string{"us-federal"}, verdict.NotApplicable, nil},
		"asked fact missing":               {facts.Device{RatedV: ptr(40.0)}, no, []string{"workmanship"}, verdict.Undecided, []string{"components.fuse.rating_a"}},
		"asked fact known":                 {facts.Device{RatedV: ptr(40.0), RatingA: ptr(100.0)}, no, []string{"workmanship"}, verdict.Met, nil},
		"fact not asked for here":          {facts.Device{RatedV: ptr(39.0)}, no, []string{"workmanship"}, verdict.Met, nil},
		"breach by the asked fact":         {facts.Device{RatedV: ptr(40.0), RatingA: ptr(101.0)}, no, []string{"workmanship"}, verdict.Breach, nil},
		"breach wins over a deciding fact": {facts.Device{RatedV: ptr(40.0), RatingA: ptr(101.0)}, nil, []string{"us-federal", "workmanship"}, verdict.Breach, nil},
		"missing wins over met":            {facts.Device{RatedV: ptr(40.0), RatingA: ptr(99.0)}, nil, []string{"us-federal", "workmanship"}, verdict.Undecided, []string{"vessel.petrol"}},
		"two facts missing": {
			facts.Device{RatedV: ptr(40.0)},
			nil,
			[]string{"us-federal", "workmanship"},
			verdict.Undecided,
			[]string{"vessel.petrol", "components.fuse.rating_a"},
		},
	} {
		t.Run(name, func(t *testing.T) {
			device := c.device
			v := judge(t, engine, devices(map[string]*facts.Device{"fuse": &device}, c.petrol, c.practice...), &record.Record{})["components.fuse"]
			assert.Equal(t, c.want, v.Outcome)
			var missing []string
			for _, g := range v.Missing {
				missing = append(missing, g.Field)
			}
			assert.Equal(t, c.missing, missing)
		})
	}
}

func TestUndecidedNamesTheGapsOfTheFact(t *testing.T) {
	device := &facts.Device{Subject: facts.Subject{Open: facts.OpenFor(map[string][]figure.Gap{
		"rated_v": {figure.Missing("components.fuse.voltage"), figure.Because("no maker's sheet")},
	})}}
	v := judge(t, soundEngine(t), devices(map[string]*facts.Device{"fuse": device}, ptr(true), "us-federal"), &record.Record{})["components.fuse"]
	assert.Equal(t, []verdict.Gap{{Field: "components.fuse.voltage"}, {Why: "no maker's sheet"}}, v.Missing)
}

func TestNotApplicableSaysWhy(t *testing.T) {
	engine := soundEngine(t)
	device := &facts.Device{RatedV: ptr(12.0)}
	v := judge(t, engine, devices(map[string]*facts.Device{"fuse": device}, ptr(false), "us-federal"), &record.Record{})["components.fuse"]
	assert.Equal(t, "applies to every fuse", v.Says)
	v = judge(t, engine, devices(map[string]*facts.Device{"fuse": device}, ptr(false), "uk"), &record.Record{})["components.fuse"]
	assert.Equal(t, "no practice set in force brings this rule; it stands in us-federal, workmanship", v.Says)
}

// several is a rule on which three sets set three limits.
const several = `# METADATA
# title: Made up
# description: Made up for tests.
# schemas:
#   - input: schema.facts
# custom:
#   id: protection/several
#   severity: danger
#   subject: devices
#   applies: every device
#   needs: [rating_a]
#   says: "{rating}, at most {limit.rating}"
#   remedy: "Less."
#   sources:
#     - {set: us-federal, source: 33-cfr-183, clause: "183.455(a)", asks: "at most 100 A", trust: read}
#     - {set: us-federal, source: 33-cfr-183, clause: "183.455(b)", asks: "something else", trust: read}
#     - {set: us-voluntary, source: abyc-e-11, clause: "", asks: "at most 50 A", trust: unverified}
#     - {set: workmanship, source: common-practice, clause: "", asks: "at most 80 A", trust: practice}
#   since: 0.1.0
package driploop.rules.protection.several

limits := {"us-federal": {"rating_a": 100}, "us-voluntary": {"rating_a": 50}, "workmanship": {"rating_a": 80}}

clauses := {"us-federal": "183.455(a)", "us-voluntary": "", "workmanship": ""}

breach contains {
	"subject": id,
	"set": set,
	"clause": clauses[set],
	"figures": {"rating_a": device.rating_a},
	"limit": {"rating_a": limit.rating_a},
} if {
	some id, device in input.devices
	some set, limit in limits
	device.rating_a > limit.rating_a
}
`

func TestEveryBreachedSetIsCitedAndTheStrictestOfTheGravestShown(t *testing.T) {
	engine, err := newEngine(folder(t, map[string]string{"protection/several.rego": several}))
	require.NoError(t, err)
	all := []string{"us-federal", "us-voluntary", "workmanship"}
	for name, c := range map[string]struct {
		rating   float64
		practice []string
		severity verdict.Severity
		limit    float64
		cited    []string
	}{
		"all three":                       {120, all, verdict.Danger, 80, all},
		"two":                             {90, all, verdict.Danger, 80, []string{"us-voluntary", "workmanship"}},
		"memory alone is a caution":       {60, all, verdict.Caution, 50, []string{"us-voluntary"}},
		"a set that is not in force":      {120, []string{"us-federal"}, verdict.Danger, 100, []string{"us-federal"}},
		"memory does not lower the grave": {120, []string{"us-federal", "us-voluntary"}, verdict.Danger, 100, []string{"us-federal", "us-voluntary"}},
	} {
		t.Run(name, func(t *testing.T) {
			doc := devices(map[string]*facts.Device{"fuse": {RatingA: &c.rating}}, nil, c.practice...)
			v := judge(t, engine, doc, &record.Record{})["components.fuse"]
			require.Equal(t, verdict.Breach, v.Outcome)
			assert.Equal(t, c.severity, v.Severity)
			assert.Equal(t, []verdict.Figure{{Name: "rating", Quantity: quantity.New(c.rating, "A")}}, v.Figures)
			assert.Equal(t, []verdict.Figure{{Name: "rating", Quantity: quantity.New(c.limit, "A")}}, v.Limit)
			var cited []string
			for _, s := range v.Sources {
				cited = append(cited, s.Set)
				assert.NotEqual(t, "183.455(b)", s.Clause, "the finding names another clause")
			}
			assert.Equal(t, c.cited, cited)
		})
	}
}

func TestLawSaysWhetherItBinds(t *testing.T) {
	engine, err := newEngine(folder(t, map[string]string{"protection/several.rego": several}))
	require.NoError(t, err)
	for _, petrol := range []*bool{nil, ptr(false), ptr(true)} {
		doc := devices(map[string]*facts.Device{"fuse": {RatingA: ptr(120.0)}}, petrol, "us-federal", "workmanship")
		v := judge(t, engine, doc, &record.Record{})["components.fuse"]
		require.Len(t, v.Sources, 2)
		assert.Equal(t, petrol, v.Sources[0].Binds)
		assert.Equal(t, verdict.Law, v.Sources[0].Force)
		assert.Nil(t, v.Sources[1].Binds, "only law binds")
	}
}

func TestFaultyFindingsAreErrorsOfTheRule(t *testing.T) {
	for name, c := range map[string]struct{ old, replacement, want string }{
		"set without clause": {`"set": set,`, `"set": "uk",`, "practice set uk brings the rule no clause"},
		"unknown clause":     {`clauses[set]`, `"183.999"`, "clause 183.999 is none that the rule cites"},
		"graver severity":    {`"set": set,`, `"set": set, "severity": "grave",`, `"grave" is no severity`},
		"truth as figure":    {`{"rating_a": device.rating_a}`, `{"rating_a": true}`, "figure rating_a is true, neither a number nor words"},
		"unknown part":       {`"set": set,`, `"set": set, "sevrity": "danger",`, `"sevrity" is no part of a finding`},
	} {
		t.Run(name, func(t *testing.T) {
			require.Contains(t, several, c.old)
			engine, err := newEngine(folder(t, map[string]string{"protection/several.rego": replaceOnce(several, c.old, c.replacement)}))
			require.NoError(t, err)
			_, err = engine.Judge(&record.Record{}, devices(map[string]*facts.Device{"fuse": {RatingA: ptr(120.0)}}, nil, "us-federal"), testDay)
			require.ErrorContains(t, err, "rule protection/several: ")
			assert.ErrorContains(t, err, c.want)
		})
	}
}
