package rules

import (
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"driploop/model/facts"
	"driploop/model/record"
	"driploop/model/verdict"
)

// testDay is the day on which the tests judge.
var testDay = time.Date(2026, 7, 1, 12, 0, 0, 0, time.UTC)

func replaceOnce(text, old, replacement string) string {
	return strings.Replace(text, old, replacement, 1)
}

// breached is a document in which one fuse breaks the sound rule.
func breached() *facts.Document {
	return devices(map[string]*facts.Device{"fuse": {RatedV: ptr(12.0)}}, ptr(true), "us-federal")
}

func TestVerdictsPointAtTheNearestPlaceThereIs(t *testing.T) {
	engine := soundEngine(t)
	at := func(line int) verdict.Range {
		return verdict.Range{Start: verdict.Position{Line: line, Column: 3}, End: verdict.Position{Line: line, Column: 7}}
	}
	for name, c := range map[string]struct {
		places map[string]verdict.Range
		want   int
	}{
		"itself":      {map[string]verdict.Range{"components": at(4), "components.fuse": at(6)}, 6},
		"its section": {map[string]verdict.Range{"components": at(4)}, 4},
		"the file":    {nil, 1},
	} {
		v := judge(t, engine, breached(), &record.Record{Places: record.PlacesOf(c.places)})["components.fuse"]
		assert.Equal(t, c.want, v.At.Start.Line, name)
	}
}

func TestJudgeTellsOfTheRecord(t *testing.T) {
	r := &record.Record{Name: "job.yaml", SHA256: "ab"}
	r.Job.Number.V, r.Job.Title.V, r.Vessel.Name.V = "XX-1", "Lamps", "Tub"
	result, err := soundEngine(t).Judge(r, breached(), testDay)
	require.NoError(t, err)
	assert.Equal(t, []string{"job.yaml", "ab", "XX-1", "Lamps", "Tub"}, []string{result.Path, result.SHA256, result.Job, result.Title, result.Vessel})
	assert.Equal(t, []string{"us-federal"}, result.Practice)
	assert.Equal(t, verdict.Counts{verdict.Met: 0, verdict.Breach: 1, verdict.Undecided: 0, verdict.NotApplicable: 0, verdict.Waived: 0}, result.Counts)
}

func TestFingerprintsStayWhenFilesAndPlacesChange(t *testing.T) {
	engine := soundEngine(t)
	fingerprintOf := func(name, job string, line int) string {
		r := &record.Record{Name: name, Places: record.PlacesOf(map[string]verdict.Range{"components": {Start: verdict.Position{Line: line, Column: 1}}})}
		r.Job.Number.V = job
		v := judge(t, engine, breached(), r)["components.fuse"]
		return v.Fingerprint(job)
	}
	first := fingerprintOf("a.yaml", "XX-1", 3)
	assert.Regexp(t, `^[0-9a-f]{16}$`, first)
	assert.Equal(t, first, fingerprintOf("b.yaml", "XX-1", 30))
	assert.NotEqual(t, first, fingerprintOf("a.yaml", "XX-2", 3))
}

func TestFingerprintsOfOneRecordDiffer(t *testing.T) {
	engine, err := New()
	require.NoError(t, err)
	result, err := engine.Judge(&record.Record{}, made(30), testDay)
	require.NoError(t, err)
	seen := map[string]bool{}
	for _, v := range result.Verdicts {
		assert.False(t, seen[v.Fingerprint("")], "%s on %s", v.Rule.ID, v.Subject)
		seen[v.Fingerprint("")] = true
	}
}

func TestWaivers(t *testing.T) {
	engine := soundEngine(t)
	text := func(v string) record.Text { return record.Text{V: v, State: record.Given} }
	day := func(v string) record.Date {
		d, err := time.Parse(time.DateOnly, v)
		require.NoError(t, err)
		return record.Date{V: d, State: record.Given}
	}
	valid := func() *record.Waiver {
		return &record.Waiver{Rule: text("protection/made-up"), Subject: text("components.fuse"), Reason: text("spare on order"), By: text("foreman"), Until: day("2026-07-01")}
	}
	for name, c := range map[string]struct {
		change func(*record.Waiver)
		want   verdict.Outcome
	}{
		"up to its last day":   {func(*record.Waiver) {}, verdict.Waived},
		"past":                 {func(w *record.Waiver) { w.Until = day("2026-06-30") }, verdict.Breach},
		"of the whole section": {func(w *record.Waiver) { w.Subject = text("components") }, verdict.Waived},
		"of another":           {func(w *record.Waiver) { w.Subject = text("components.fus") }, verdict.Breach},
		"of a part":            {func(w *record.Waiver) { w.Subject = text("components.fuse.rating") }, verdict.Breach},
		"of another rule":      {func(w *record.Waiver) { w.Rule = text("protection/made") }, verdict.Breach},
		"without reason":       {func(w *record.Waiver) { w.Reason = record.Text{} }, verdict.Breach},
		"with empty reason":    {func(w *record.Waiver) { w.Reason = text("  ") }, verdict.Breach},
		"without author":       {func(w *record.Waiver) { w.By = record.Text{} }, verdict.Breach},
		"without date":         {func(w *record.Waiver) { w.Until = record.Date{} }, verdict.Breach},
		"of unknown date":      {func(w *record.Waiver) { w.Until.State = record.Unknown }, verdict.Breach},
	} {
		t.Run(name, func(t *testing.T) {
			w := valid()
			c.change(w)
			v := judge(t, engine, breached(), &record.Record{Waivers: []*record.Waiver{w}})["components.fuse"]
			assert.Equal(t, c.want, v.Outcome)
			if c.want == verdict.Waived {
				assert.Equal(t, &verdict.Waiver{By: "foreman", Reason: "spare on order", Until: "2026-07-01"}, v.Waiver)
				assert.NotEmpty(t, v.Says, "a waived breach still says what is wrong")
			}
		})
	}
}

func TestWaiversWaiveNothingButBreaches(t *testing.T) {
	text := func(v string) record.Text { return record.Text{V: v, State: record.Given} }
	w := &record.Waiver{Rule: text("protection/made-up"), Subject: text("components.fuse"), Reason: text("r"), By: text("b"), Until: record.Date{V: testDay, State: record.Given}}
	doc := devices(map[string]*facts.Device{"fuse": {}}, ptr(true), "us-federal")
	v := judge(t, soundEngine(t), doc, &record.Record{Waivers: []*record.Waiver{w}})["components.fuse"]
	assert.Equal(t, verdict.Undecided, v.Outcome)
}

// TestEveryRuleSpeaksOfEverySubject counts the subjects of the demo records and of
// all examples in their facts as JSON, apart from the engine: every rule speaks of
// each once, and the outcomes add up.
func TestEveryRuleSpeaksOfEverySubject(t *testing.T) {
	engine, err := New()
	require.NoError(t, err)
	for name, text := range everyRecord(t, engine) {
		r, doc := solved(t, name, text)
		result, err := engine.Judge(r, doc, testDay)
		require.NoError(t, err)
		input, ok := plainInput(t, doc).(map[string]any)
		require.True(t, ok)
		want, total := map[string]int{}, 0
		for _, rule := range engine.Rules() {
			subjects, _ := input[rule.Subject].(map[string]any)
			n := len(subjects)
			if rule.Subject == "vessel" || rule.Subject == "job" {
				n = 1
			}
			if n > 0 {
				want[rule.ID] = n
			}
			total += n
		}
		seen, pairs := map[string]int{}, map[string]bool{}
		outcomes := verdict.Counts{verdict.Met: 0, verdict.Breach: 0, verdict.Undecided: 0, verdict.NotApplicable: 0, verdict.Waived: 0}
		for i := range result.Verdicts {
			v := &result.Verdicts[i]
			seen[v.Rule.ID]++
			outcomes[v.Outcome]++
			pairs[v.Fingerprint("")] = true
		}
		assert.Equal(t, want, seen, name)
		assert.Len(t, pairs, total, "%s: a pair stands twice", name)
		assert.Equal(t, total, result.Counts.Total(), name)
		assert.Equal(t, outcomes, result.Counts, name)
	}
}

func TestJudgeIsSafeForConcurrentUseAndRepeatable(t *testing.T) {
	engine, err := New()
	require.NoError(t, err)
	doc := made(20)
	want, err := engine.Judge(&record.Record{}, doc, testDay)
	require.NoError(t, err)
	var work sync.WaitGroup
	for range 8 {
		work.Go(func() {
			got, err := engine.Judge(&record.Record{}, doc, testDay)
			assert.NoError(t, err)
			assert.Equal(t, want, got)
		})
	}
	work.Wait()
}

func TestRulesNamesNearestID(t *testing.T) {
	engine, err := New()
	require.NoError(t, err)
	_, err = engine.Rule("protection/device-voltage-lov")
	require.EqualError(t, err, `no rule "protection/device-voltage-lov"; did you mean protection/device-voltage-low?`)
	_, err = engine.Rule("x")
	require.EqualError(t, err, `no rule "x"`)
	_, err = engine.Source("33-cfr-18")
	require.EqualError(t, err, `no source "33-cfr-18"; did you mean 33-cfr-183?`)
	rule, err := engine.Rule("protection/device-voltage-low")
	require.NoError(t, err)
	assert.Equal(t, verdict.Warning, rule.Severity)
	assert.True(t, slices.IsSortedFunc(engine.Rules(), func(a, b *verdict.Rule) int { return strings.Compare(a.ID, b.ID) }))
}

func TestLimitsByPracticeSetAndCondition(t *testing.T) {
	limits, err := soundEngine(t).Limits("protection/made-up")
	require.NoError(t, err)
	require.Len(t, limits, 3)
	assert.Equal(t, []string{"us-federal", "workmanship", "workmanship"}, []string{limits[0].Set, limits[1].Set, limits[2].Set})
	assert.Equal(t, "a fuse", limits[1].When)
	assert.InDelta(t, 58, limits[1].Figures[0].Quantity.Base, 0)

	engine, err := New()
	require.NoError(t, err)
	limits, err = engine.Limits("protection/device-too-far")
	require.NoError(t, err)
	conditions := make([]string, 0, len(limits))
	for _, l := range limits {
		conditions = append(conditions, l.Set+" "+l.When+" "+l.Clause)
	}
	assert.Equal(t, []string{
		"us-federal from a battery 183.460(a)", "us-federal from another source 183.455(b)",
		"us-voluntary from a battery ", "us-voluntary from a cranking feed ", "us-voluntary from another source ",
		"international from a battery 8", "international from a cranking feed 8",
	}, conditions)
}

func TestDigestChangesWithARule(t *testing.T) {
	first := soundEngine(t).Digest()
	assert.Regexp(t, `^sha256:[0-9a-f]{64}$`, first)
	assert.Equal(t, first, soundEngine(t).Digest())
	other, err := newEngine(folder(t, map[string]string{soundFile: spoil(t, "rating_a > 100", "rating_a > 99")}))
	require.NoError(t, err)
	assert.NotEqual(t, first, other.Digest())
}

// made makes up the facts of a boat with n conductors, most facts known.
func made(n int) *facts.Document {
	doc := &facts.Document{
		Format: facts.Format, Practice: []string{"us-federal", "us-voluntary", "international", "workmanship"},
		Vessel:     &facts.Vessel{Subject: facts.Subject{Path: "vessel"}, SystemV: 12, Petrol: ptr(true), StrayNegatives: []string{}},
		Job:        &facts.Job{Subject: facts.Subject{Path: "job"}, Kind: ptr("lights")},
		Conductors: map[string]*facts.Conductor{}, Runs: map[string]*facts.Run{}, Ends: map[string]*facts.End{}, Segments: map[string]*facts.Segment{},
		Studs: map[string]*facts.Stud{}, Devices: map[string]*facts.Device{}, Loads: map[string]*facts.Load{}, Components: map[string]*facts.Component{},
		Penetrations: map[string]*facts.Penetration{},
	}
	for i := range n {
		doc.Conductors["P"+strconv.Itoa(i)] = madeConductor("P" + strconv.Itoa(i))
		for _, side := range []string{"from", "to"} {
			id := "P" + strconv.Itoa(i)
			doc.Ends[id+"."+side] = &facts.End{
				Subject: facts.Subject{Path: "conductors." + id + ".ends." + side}, Conductor: id, Component: "bus", On: "bus.a", OnKind: "busbar",
				Role: "positive", Duty: "normal", Terminal: ptr("ring"), Hole: ptr("M8"), Stud: ptr("M8"), Exposure: ptr("dry"), Size: ptr("8 AWG"),
			}
		}
		for part := range 2 {
			id := "P" + strconv.Itoa(i) + ".route[" + strconv.Itoa(part) + "]"
			doc.Segments[id] = &facts.Segment{
				Subject: facts.Subject{Path: "conductors." + id}, Conductor: "P" + strconv.Itoa(i), Role: "positive", Duty: "normal",
				LengthMM: ptr(1200.0), In: ptr("open"), SupportMM: ptr(400.0), Exposure: ptr("damp"),
			}
		}
		if i%3 == 0 {
			id := "c" + strconv.Itoa(i)
			path := facts.Subject{Path: "components." + id}
			doc.Devices[id] = &facts.Device{Subject: path, Kind: "fuse", Purpose: "normal", RatedV: ptr(32.0), NominalV: ptr(12.0), RatingA: ptr(60.0)}
			doc.Components[id] = &facts.Component{Subject: path, Kind: "fuse", Electric: true, Exposure: ptr("dry"), PetrolNear: ptr(false)}
			doc.Studs[id+".line"] = &facts.Stud{Subject: path, On: id + ".line", OnKind: "fuse", Landed: 2, Ends: []string{"P1.to"}}
			doc.Loads[id] = &facts.Load{Subject: path, Kind: "lamp", Purpose: ptr("other"), Devices: []string{}, Switches: []string{}, CurrentA: ptr(5.0), DropPct: ptr(2.5)}
			doc.Penetrations[id] = &facts.Penetration{Subject: facts.Subject{Path: "penetrations." + id}, Exposure: ptr("wet"), SealKind: ptr("gland"), Touches: []string{}, MakerAllows: []string{}}
			doc.Runs[id] = &facts.Run{
				Subject: facts.Subject{Path: "conductors.P" + strconv.Itoa(i)}, Conductor: "P1", Source: "house.pos", SourceKind: "battery", Device: id,
				Duty: "normal", SelfLimiting: ptr(false), LengthMM: ptr(150.0), Enclosed: ptr(false), Via: []string{"P1"},
			}
		}
	}
	return doc
}

func madeConductor(id string) *facts.Conductor {
	return &facts.Conductor{
		Subject: facts.Subject{Path: "conductors." + id}, From: "a.load", To: "b.pos", Role: "positive", Duty: "normal", Fed: true,
		Size: ptr("8 AWG"), AreaMM2: ptr(8.366), InsulationC: ptr(105.0), Material: ptr("copper"), Colour: ptr("red"), LengthMM: ptr(2400.0),
		Ungrounded: ptr(true), Bare: ptr(false), Table5A: ptr(80.0), AllowableA: ptr(80.0), CurrentA: ptr(40.0), SurgeA: ptr(0.0),
		GuardA: ptr(60.0), GuardedBy: ptr("fuse"), GuardTable5Pct: ptr(75.0), GuardAllowablePct: ptr(75.0),
	}
}
